// Guards the look of the house: what is visible at the top, how long a file grows, which flags the compiler
// gets.

#include <doctest/doctest.h>

#include <filesystem>
#include <regex>
#include <set>

#include "tests/house/source_files.h"

namespace halfdrop::house {
namespace {

constexpr std::size_t longest_file_lines = 450;

bool loosens_arithmetic(const std::string& text) {
  static const std::regex pattern(R"(fast-math|-Ofast|unsafe-math|-ffp-contract=(fast|on)|-march=native)");
  return std::regex_search(text, pattern);
}

}  // namespace

TEST_CASE("nothing but the house itself is visible at the top") {
  const std::set<std::string> house = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "game",
                                       "assets",         "levels",    "physics",       "tests"};
  std::set<std::string> visible;
  for (const auto& entry : std::filesystem::directory_iterator(HALFDROP_SOURCE_FOLDER)) {
    const std::string name = entry.path().filename().string();
    if (!name.starts_with('.')) visible.insert(name);
  }
  for (const std::string& name : visible)
    CHECK_MESSAGE(house.contains(name), name << " does not belong there");
  for (const std::string& name : house) CHECK_MESSAGE(visible.contains(name), name << " is missing");
}

TEST_CASE("no file grows beyond one thing") {
  for (const SourceFile& file : sources_below({"physics", "game", "tests"})) {
    CAPTURE(file.path);
    CHECK(lines_of(file.text).size() <= longest_file_lines);
  }
}

TEST_CASE("no build may trade exact arithmetic for speed") {
  CHECK(text_of("CMakeLists.txt").find("-ffp-contract=off") != std::string::npos);
  for (const char* path : {"CMakeLists.txt", "tests/CMakeLists.txt", "tests/run.sh", "game/setup.sh"}) {
    CAPTURE(path);
    CHECK_FALSE(loosens_arithmetic(text_of(path)));
  }
  CHECK(loosens_arithmetic("add_compile_options(-O2 -ffast-math)"));
  CHECK(loosens_arithmetic("-DCMAKE_CXX_FLAGS=-Ofast"));
}

}  // namespace halfdrop::house
