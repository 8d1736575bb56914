// Languages: what is read, every fault of a file at once, and one that is only dropped into the folder.

#include <doctest/doctest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "game/level/level.h"
#include "game/level/say.h"
#include "game/level/text_catalogue.h"

namespace halfdrop {
namespace {

/// A data folder with languages of the tests' own, gone with it.
class Languages {
 public:
  explicit Languages(const std::string& name)
      : folder_(std::filesystem::path(HALFDROP_BUILD_FOLDER) /
                ("languages-" + name + std::to_string(::getpid()))) {
    std::filesystem::create_directories(folder_ / "assets" / "text");
    put("en", R"({"language.name": "English", "sheet.run": "Run", "sheet.of": "{done} of {all} lines"})");
  }
  ~Languages() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }
  Languages(const Languages&) = delete;
  Languages& operator=(const Languages&) = delete;

  void put(const std::string& language, const std::string& json) const {
    std::ofstream(folder_ / "assets" / "text" / (language + ".json")) << json;
  }
  [[nodiscard]] std::string folder() const { return folder_.string(); }

 private:
  std::filesystem::path folder_;
};

/// place: message, a line a fault.
std::string faults_of(const Languages& languages, const std::string& language) {
  const auto read = read_language(languages.folder(), language);
  std::string all;
  if (read) return all;
  for (const Fault& fault : read.error()) {
    CHECK(fault.file.ends_with("/assets/text/" + language + ".json"));
    all += fault.place + ": " + fault.message + "\n";
  }
  return all;
}

}  // namespace

TEST_CASE("every fault of a language is found at once, with its place and the nearest key") {
  const Languages languages("faults");
  languages.put(
      "xx", R"({"language.name": 7, "sheet.rum": "Lauf", "sheet.of": "{don} of { lines", "sheet.of": ""})");
  CHECK(faults_of(languages, "xx") ==
        "/sheet.of: key stands twice\n"
        "/language.name: expected a text, found a number\n"
        "/sheet.rum: unknown key \"sheet.rum\"; did you mean \"sheet.run\"?\n"
        "/sheet.of: expected {name}, found a brace by itself\n"
        "/sheet.of: expected a text of 1 to 600 characters, found 0\n"
        "/sheet.run: is missing: expected a text\n");
  languages.put("xx", R"({"language.name": "x", "sheet.run": "{run}", "sheet.of": "{don} of {all}"})");
  CHECK(faults_of(languages, "xx") ==
        "/sheet.run: expected the placeholders of the English text, none, found {run}\n"
        "/sheet.of: expected the placeholders of the English text, {all}, {done}, found {all}, {don}; did "
        "you mean "
        "\"done\"?\n");
}

TEST_CASE("a language that is no JSON, or no object, or not there") {
  const Languages languages("broken");
  languages.put("xx", "{\"sheet.run\": ");
  CHECK_FALSE(faults_of(languages, "xx").empty());
  languages.put("xx", "[]");
  CHECK_FALSE(faults_of(languages, "xx").empty());
  CHECK(read_language(languages.folder(), "yy").error().front().kind == FaultKind::cannot_open);
}

TEST_CASE("a third language is a file in the folder: it is listed, and it is what is said") {
  const Languages languages("third");
  languages.put("zz", R"({"language.name": "Zz", "sheet.run": "Zug", "sheet.of": "{all}: {done}!"})");
  CHECK(halfdrop::languages(languages.folder()) == std::vector<std::string>{"en", "zz"});
  const auto zz = read_language(languages.folder(), "zz");
  REQUIRE(zz);
  CHECK(say("sheet.run") == "Run");
  speak(*zz);
  CHECK(say("sheet.run") == "Zug");
  CHECK(std::string(Phrase("sheet.run")) == "Zug");
  CHECK(say("sheet.yes") == "Yes (Y)");  // which it lacks: the program's own English
  speak_english();
  CHECK(say("sheet.run") == "Run");
}

TEST_CASE("blanks are filled in by name, in the language's own order") {
  const TextCatalogue words{{{"sheet.working", "{of}/{done}/{of}"}, {"sheet.run", "{no"}}};
  speak(words);
  CHECK(say("sheet.working", {{"done", "1"}, {"of", "{done}"}}) == "{done}/1/{done}");
  CHECK(say("sheet.run", {{"no", "1"}}) == "");
  speak_english();
  CHECK(placeholders("{b} and {a} and {b}").value() == std::vector<std::string>{"a", "b"});
  CHECK_FALSE(placeholders("a}"));
  CHECK_FALSE(placeholders("{A}"));
}

TEST_CASE("words without a key stand as they are") {
  CHECK(say(Phrase()) == "");
  CHECK(say(Phrase::not_yet("Not moved yet.")) == "Not moved yet.");
}

TEST_CASE("every language of the project is sound") {
  const auto names = languages(data_folder());
  CHECK(std::find(names.begin(), names.end(), "en") != names.end());
  CHECK(std::find(names.begin(), names.end(), "de") != names.end());
  for (const std::string& name : names) {
    CAPTURE(name);
    CHECK(read_language(data_folder(), name));
  }
}

}  // namespace halfdrop
