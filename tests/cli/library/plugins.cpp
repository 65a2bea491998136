// Built by library.sh against the installed library: cases with plugins, as a program of one's own has them.
//   plugins CASE OUT PLUGIN...   solves CASE with the plugins, writes its files to OUT, says what they found
//   plugins --of-case CASE       lets the case load what it names
#include <bedbow/bedbow.h>

#include <cstdio>
#include <string>

using namespace bedbow::library;

int main(int argc, char** argv) {
  if (argc < 3) return 10;
  try {
    Plugins plugins;
    plugins.of_case = argv[1] == std::string("--of-case");
    for (int i = 3; i < argc; ++i) plugins.files.emplace_back(argv[i]);
    // A changed case keeps the plugins of the one it came from.
    const Case one = Case::from_file(argv[plugins.of_case ? 2 : 1], plugins).with("title", "\"with plugins\"");
    for (const std::string& loaded : one.plugins()) std::printf("%s\n", loaded.c_str());
    const Result r = one.solve();
    for (const Finding& f : r.findings) std::printf("%s: %s = %.9g\n", f.name.c_str(), f.key.c_str(), f.value);
    if (!plugins.of_case)
      for (const std::string& file : r.write(argv[2])) std::printf("wrote %s\n", file.c_str());
  } catch (const Error& e) {
    std::fprintf(stderr, "%s\n", e.what());
    return 20 + static_cast<int>(e.kind);
  }
  return 0;
}
