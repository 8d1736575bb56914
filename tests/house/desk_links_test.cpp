#include <doctest/doctest.h>

#include "tests/house/source_files.h"

namespace halfdrop::house {
namespace {

bool mentions_sfml(const std::string& libraries) { return libraries.find("libsfml") != std::string::npos; }

}  // namespace

TEST_CASE("the desk needs no SFML") {
  const std::string libraries = output_of("ldd '" HALFDROP_BUILD_FOLDER "/halfdrop-desk'");
  CHECK(libraries.find("libstdc++") != std::string::npos);
  CHECK_FALSE(mentions_sfml(libraries));
  CHECK(
      mentions_sfml("\tlibsfml-graphics.so.2.5 => /usr/lib/x86_64-linux-gnu/libsfml-graphics.so.2.5 (0x0)"));
}

}  // namespace halfdrop::house
