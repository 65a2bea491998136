#include "solver/linear/tree_tasks.h"

#include "solver/linear/process.h"

#include <algorithm>
#include <condition_variable>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace bedbow::linear {

namespace {

/// Consecutive fronts for one thread, with their dependencies.
struct Task {
  int begin, end; ///< fronts
  int parent = -1;
  int waiting = 0; ///< tasks that must be done before
  std::vector<int> children;
};

/// Subtrees with less than this share of all work are one task.
constexpr double small_share = 1.0 / 48;

std::vector<Task> tasks_of(const Fronts& f) {
  std::vector<Task> tasks;
  std::vector<int> task_of(f.parent.size());
  const double small = small_share * f.total_work();
  for (int i = 0; i < f.size();) {
    int root = i;
    while (f.parent[root] >= 0 && f.begin[f.parent[root]] == i && f.work[f.parent[root]] <= small)
      root = f.parent[root];
    // A front whose children are separate tasks is a task by itself.
    const int begin = f.begin[root] == i ? i : root;
    for (int k = begin; k <= root; ++k) task_of[k] = static_cast<int>(tasks.size());
    tasks.push_back({begin, root + 1, -1, 0, {}});
    i = root + 1;
  }
  for (std::size_t t = 0; t < tasks.size(); ++t) {
    const int above = f.parent[tasks[t].end - 1];
    if (above < 0) continue;
    tasks[t].parent = task_of[above];
    tasks[task_of[above]].children.push_back(static_cast<int>(t));
  }
  return tasks;
}

class Crew {
public:
  Crew(std::vector<Task>& tasks, const FrontWork& work, bool up)
      : tasks_(tasks)
      , work_(work)
      , up_(up)
      , ready_(tasks.size(), 0)
      , left_(static_cast<int>(tasks.size())) {
    for (std::size_t t = 0; t < tasks.size(); ++t) {
      tasks[t].waiting = up ? static_cast<int>(tasks[t].children.size()) : tasks[t].parent >= 0;
      ready_[t] = tasks[t].waiting == 0;
    }
  }

  void run(int threads) {
    {
      std::vector<std::jthread> others;
      for (int k = 1; k < threads; ++k)
        others.emplace_back([this, k, threads] {
          single_thread_openmp();
          member(k, threads);
        });
      member(0, threads);
    }
    if (trouble_) std::rethrow_exception(trouble_);
  }

private:
  void member(int thread, int threads) {
    // Upwards from the start of the thread's share, downwards from its end.
    const auto n = static_cast<int>(tasks_.size());
    const int home = static_cast<int>(static_cast<long long>(n) * (up_ ? thread : thread + 1) / threads);
    std::unique_lock lock(mutex_);
    while (left_ > 0 && !trouble_) {
      const int t = next(home);
      if (t < 0) {
        changed_.wait(lock);
        continue;
      }
      ready_[t] = 0;
      lock.unlock();
      std::exception_ptr failed;
      try {
        do_task(tasks_[t], thread);
      } catch (...) {
        failed = std::current_exception();
      }
      lock.lock();
      if (failed && !trouble_) trouble_ = failed;
      --left_;
      finished(tasks_[t]);
      changed_.notify_all();
    }
  }

  void do_task(const Task& t, int thread) const {
    if (up_)
      for (int f = t.begin; f < t.end; ++f) work_(f, thread);
    else
      for (int f = t.end; f-- > t.begin;) work_(f, thread);
  }

  void finished(const Task& t) {
    const auto free = [&](int other) { ready_[other] = --tasks_[other].waiting == 0; };
    if (!up_)
      for (const int c : t.children) free(c);
    else if (t.parent >= 0)
      free(t.parent);
  }

  /// The ready task nearest to the thread's own share, in the direction of the traversal.
  [[nodiscard]] int next(int home) const {
    const auto n = static_cast<int>(tasks_.size());
    for (int k = 0; k < n; ++k) {
      const int t = up_ ? (home + k) % n : (home - 1 - k + 2 * n) % n;
      if (ready_[t]) return t;
    }
    return -1;
  }

  std::vector<Task>& tasks_;
  const FrontWork& work_;
  bool up_;
  std::vector<char> ready_;
  int left_;
  std::mutex mutex_;
  std::condition_variable changed_;
  std::exception_ptr trouble_;
};

void walk(const Fronts& fronts, int threads, const FrontWork& work, bool up) {
  if (threads <= 1) {
    for (int i = 0; i < fronts.size(); ++i) work(up ? i : fronts.size() - 1 - i, 0);
    return;
  }
  std::vector<Task> tasks = tasks_of(fronts);
  Crew(tasks, work, up).run(threads);
}

} // namespace

void upwards(const Fronts& fronts, int threads, const FrontWork& work) {
  walk(fronts, threads, work, true);
}

void downwards(const Fronts& fronts, int threads, const FrontWork& work) {
  walk(fronts, threads, work, false);
}

int threads_for(double work, int asked) {
  constexpr double least = 1e8; // multiply-adds: about ten milliseconds
  const int cores = asked > 0 ? asked : static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
  return work < least ? 1 : std::min(cores, 16);
}

} // namespace bedbow::linear
