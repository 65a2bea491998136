// Built by library.sh against the installed library: solves a case and writes its files, as the program does.
//   solve CASE OUT
#include <bedbow/bedbow.h>

#include <cstdio>

int main(int argc, char** argv) {
  if (argc < 3) return 10;
  try {
    bedbow::library::Case::from_file(argv[1]).solve().write(argv[2]);
  } catch (const bedbow::library::Error& e) {
    std::fprintf(stderr, "%s\n", e.what());
    return 20 + static_cast<int>(e.kind);
  }
  return 0;
}
