// Guards the look of the house: what is visible at the top, how long a file grows, which flags the compiler
// gets.

#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <map>
#include <set>
#include <string_view>

#include "tests/house/source_files.h"

namespace halfdrop::house {
namespace {

constexpr std::size_t longest_file_lines = 400;
constexpr std::size_t longest_function_lines = 40;

/// Is this the first line of a namespace or of a type?
bool heads_no_function(std::string_view head) {
  for (const std::string_view before : {"inline ", "extern "}) {
    if (head.starts_with(before)) head.remove_prefix(before.size());
  }
  const auto end = std::find_if(head.begin(), head.end(), [](unsigned char letter) {
    return std::isalnum(letter) == 0 && letter != '_';
  });
  static const std::set<std::string_view> words = {"namespace", "struct", "class", "enum", "union"};
  return words.contains(std::string_view(head.begin(), end));
}

/// Lines between the braces of each function at the left margin, by its first line. clang-format puts the
/// closing brace of such a function, and of nothing inside it, at the margin.
std::map<std::string, std::size_t> function_lengths(const std::string& text) {
  std::map<std::string, std::size_t> lengths;
  std::string head;
  std::size_t opened = 0, number = 0;
  bool table = false;  // no function, whatever stands in it
  for (const std::string& line : lines_of(text)) {
    ++number;
    if (opened == 0 && line.ends_with("= {")) table = true;
    if (table) {
      if (line.starts_with('}') || line.ends_with("};")) table = false;
      continue;
    }
    if (opened > 0 && line.starts_with('}')) {
      lengths[head] = number - opened - 1;
      opened = 0;
    } else if (opened == 0 && !line.empty()) {
      if (std::isalpha(static_cast<unsigned char>(line[0])) != 0) head = line;
      if (line.ends_with('{') && !heads_no_function(head)) opened = number;
    }
  }
  return lengths;
}

bool loosens_arithmetic(std::string_view text) {
  constexpr std::string_view loose[] = {"fast-math",          "-Ofast",           "unsafe-math",
                                        "-ffp-contract=fast", "-ffp-contract=on", "-march=native"};
  return std::any_of(std::begin(loose), std::end(loose),
                     [&](std::string_view flag) { return text.find(flag) != std::string_view::npos; });
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

TEST_CASE("no function grows beyond what is seen at once") {
  for (const SourceFile& file : sources_below({"physics", "game"})) {
    for (const auto& [head, lines] : function_lengths(file.text))
      CHECK_MESSAGE(lines <= longest_function_lines,
                    file.path << ": " << head << " has " << lines << " lines");
  }
  const auto lengths =
      function_lengths("namespace a {\nstruct B {\n};\nint f(\n    int x) {\n  if (x) {\n  }\n}\n}\n");
  REQUIRE(lengths.size() == 1);
  CHECK(lengths.at("int f(") == 2);
  CHECK(function_lengths("extern enum class A {\n};\nunion B {\n};\n").empty());
  CHECK(function_lengths("structure f() {\n  g();\n}\n").size() == 1);
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
