#include "io/sweep/sweep_runner.h"

#include "solver/model/substructure_cache.h"
#include "solver/study/worker_pool.h"

#include <chrono>
#include <cmath>
#include <condition_variable>
#include <exception>
#include <limits>
#include <mutex>
#include <thread>

namespace bedbow {

namespace {

using Clock = std::chrono::steady_clock;
constexpr std::chrono::milliseconds between_writes{250};
constexpr std::size_t most_waiting = 4096; // greatest number of results waiting to be written

/// The numbers still to be computed, handed out one by one.
class Queue {
public:
  Queue(std::vector<NumberRange> ranges, Shard shard)
      : ranges_(std::move(ranges))
      , shard_(shard) {
    for (const NumberRange& r : ranges_) size_ += r.to - r.from;
  }
  [[nodiscard]] std::uint64_t size() const { return size_; }
  std::optional<std::uint64_t> take() {
    const std::scoped_lock lock(guard_);
    while (at_ < ranges_.size() && ranges_[at_].from == ranges_[at_].to) ++at_;
    if (at_ == ranges_.size()) return std::nullopt;
    return ranges_[at_].from++ * shard_.count + shard_.index;
  }

private:
  std::mutex guard_;
  std::vector<NumberRange> ranges_;
  Shard shard_;
  std::size_t at_ = 0;
  std::uint64_t size_ = 0;
};

/// Workers on one side, the writer on the other.
class Desk {
public:
  /// Hands a result over; waits while too many are queued.
  void put(VariantResult result) {
    std::unique_lock lock(guard_);
    room_.wait(lock, [&] { return results_.size() < most_waiting || closed_; });
    results_.push_back(std::move(result));
  }
  void leave(std::exception_ptr trouble) {
    const std::scoped_lock lock(guard_);
    if (trouble && !trouble_) trouble_ = trouble;
    --workers_;
    come_.notify_one();
  }
  void enter(int workers) { workers_ = workers; }
  /// Results received after a while, or as soon as all workers have finished. \return whether workers are still
  /// running.
  bool collect(std::vector<VariantResult>& out) {
    std::unique_lock lock(guard_);
    come_.wait_for(lock, between_writes, [&] { return workers_ == 0; });
    out.clear();
    out.swap(results_);
    room_.notify_all();
    return workers_ > 0;
  }
  void close() {
    const std::scoped_lock lock(guard_);
    closed_ = true;
    room_.notify_all();
  }
  [[nodiscard]] std::exception_ptr trouble() const { return trouble_; }

private:
  std::mutex guard_;
  std::condition_variable come_, room_;
  std::vector<VariantResult> results_;
  std::exception_ptr trouble_;
  int workers_ = 0;
  bool closed_ = false;
};

/// Closes the queue and stops the workers, whatever happens to the writer.
struct Closing {
  std::atomic<bool>& ending;
  Desk& desk;
  ~Closing() {
    ending = true;
    desk.close();
  }
};

/// Keeps count for the progress line.
class Tally {
public:
  Tally(const VariantStore& store, std::uint64_t total, std::uint64_t left)
      : begin_(Clock::now())
      , left_(left) {
    p_.total = total;
    p_.done = total - left;
    store.each([&](const VariantResult& r) { look(r); }, "WHERE pass = 1 ORDER BY cost IS NULL, cost, mass_kg LIMIT 1");
  }
  const SweepProgress& add(const std::vector<VariantResult>& results) {
    for (const VariantResult& r : results) {
      ++computed_;
      ++p_.done;
      p_.failed += r.failed;
      look(r);
    }
    const double seconds = std::chrono::duration<double>(Clock::now() - begin_).count();
    p_.rate = seconds > 0 ? static_cast<double>(computed_) / seconds : 0;
    p_.seconds_left = p_.rate > 0 ? static_cast<double>(left_ - computed_) / p_.rate : std::nan("");
    return p_;
  }

private:
  void look(const VariantResult& r) {
    if (r.pass && (!p_.best || is_better(r, *p_.best))) p_.best = r;
  }
  Clock::time_point begin_;
  std::uint64_t left_, computed_ = 0;
  SweepProgress p_;
};

std::uint64_t shard_size(std::uint64_t variants, const Shard& s) {
  return variants > s.index ? (variants - s.index - 1) / s.count + 1 : 0;
}

} // namespace

bool is_better(const VariantResult& a, const VariantResult& b) {
  const double x = a[Figure::cost], y = b[Figure::cost];
  if (std::isfinite(x) && std::isfinite(y) && x != y) return x < y;
  if (a[Figure::mass] != b[Figure::mass]) return a[Figure::mass] < b[Figure::mass];
  return a.id < b.id;
}

bool run_sweep(const VariantMaker& maker, VariantStore& store, const SweepRun& run) {
  Queue queue(store.missing(run.shard), run.shard);
  Tally tally(store, shard_size(store.identity().variants, run.shard), queue.size());
  std::atomic<bool> ending{false};
  Desk desk;
  const auto work = [&] {
    std::exception_ptr trouble;
    SubstructureCache parts;
    try {
      while (!ending && !(run.stop && *run.stop)) {
        const auto id = queue.take();
        if (!id) break;
        desk.put(maker.make(*id, &parts));
      }
    } catch (...) {
      trouble = std::current_exception();
    }
    desk.leave(trouble);
  };
  const int threads = thread_count(run.threads);
  desk.enter(threads);
  std::vector<std::jthread> pool;
  const Closing closing{ending, desk}; // before the threads are joined
  for (int t = 0; t < threads; ++t) pool.push_back(worker([&work] { work(); }));
  std::vector<VariantResult> results;
  for (bool working = true; working;) {
    working = desk.collect(results);
    store.add(results);
    if (run.progress) run.progress(tally.add(results));
  }
  if (desk.trouble()) std::rethrow_exception(desk.trouble());
  return store.missing(run.shard).empty();
}

} // namespace bedbow
