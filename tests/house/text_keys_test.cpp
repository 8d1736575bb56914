// Every text that the code says stands in assets/text, with the blanks it is given, and nothing else does.

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <set>
#include <string_view>

#include <nlohmann/json.hpp>

#include "tests/house/source_files.h"
#include "tests/support/json.h"

namespace halfdrop::house {
namespace {

using test::Json;

/// What stands in {braces}, sorted.
std::set<std::string> blanks_of(const std::string& text) {
  static const std::regex blank("\\{([^}]*)\\}");
  std::set<std::string> names;
  for (std::sregex_iterator found(text.begin(), text.end(), blank), end; found != end; ++found)
    names.insert((*found)[1]);
  return names;
}

std::map<std::string, std::string> texts_of(const std::string& language) {
  const Json json = test::json_of(text_of("assets/text/" + language + ".json"));
  std::map<std::string, std::string> texts;
  for (const auto& [key, text] : json.items()) texts[key] = text.get<std::string>();
  return texts;
}

/// One writing-out of a key in the code.
struct Use {
  std::string key, where;
  bool gives_blanks = false;  ///< say("key", {...
  std::set<std::string> blanks;
};

/// Names in say("key", {{"name", ...}, ...}): the texts that begin a brace two deep.
std::set<std::string> blanks_given(const std::string& text, std::size_t from) {
  std::set<std::string> names;
  int depth = 0;
  for (std::size_t i = from; i < text.size(); ++i) {
    if (text[i] == '"') {
      const std::size_t begin = i + 1;
      for (++i; i < text.size() && text[i] != '"'; ++i) i += text[i] == '\\' ? 1 : 0;
      const std::size_t before = text.find_last_not_of(" \n", begin - 2);
      if (depth == 2 && text[before] == '{') names.insert(text.substr(begin, i - begin));
      continue;
    }
    if (text[i] == '{' || text[i] == '(' || text[i] == '[') ++depth;
    if (text[i] == '}' || text[i] == ')' || text[i] == ']') --depth;
    if (depth <= 0) break;
  }
  return names;
}

/// Literals that look like a key of one of these sections ("sheet.", ...).
std::vector<Use> uses_in(const SourceFile& file, const std::set<std::string>& sections) {
  static const std::regex key("\"([a-z0-9_]+)((?:\\.[a-z0-9_]+)+)\"");
  std::vector<Use> uses;
  for (std::sregex_iterator found(file.text.begin(), file.text.end(), key), end; found != end; ++found) {
    if (!sections.contains((*found)[1])) continue;
    Use use{(*found)[1].str() + (*found)[2].str(), file.path, false, {}};
    const auto at = static_cast<std::size_t>(found->position());
    const bool said = at >= 4 && file.text.compare(at - 4, 4, "say(") == 0;
    const std::size_t after =
        file.text.find_first_not_of(" \n", at + static_cast<std::size_t>(found->length()));
    if (said && file.text[after] == ',') {
      use.gives_blanks = true;
      use.blanks = blanks_given(file.text, file.text.find('{', after));
    }
    uses.push_back(std::move(use));
  }
  return uses;
}

std::set<std::string> sections_of(const std::map<std::string, std::string>& texts) {
  std::set<std::string> sections;
  for (const auto& [key, text] : texts) sections.insert(key.substr(0, key.find('.')));
  return sections;
}

/// Names that no one reads: of places to click, of an attempt's end, of a substance, of a unit, of a piece in
/// an answer, of a cell.
const std::set<std::string> kNames = {"hand in",      "handed in",      "level list",       "too high",
                                      "too low",      "mol dm⁻³",       "sodium hydroxide", " mol dm⁻³",
                                      "go on",        "conical flask",  "white tile",       "wash bottle",
                                      "waste beaker", "first endpoint", "/first endpoint",  "first titre",
                                      "/first titre", "two endpoints"};

/// A literal with two words of small letters beside each other: words that somebody reads.
bool holds_words(const std::string& line) {
  static const std::regex literal("\"((?:[^\"\\\\]|\\\\.)*)\""), words("[A-Za-z,]{2,} [a-z]{2,}");
  for (std::sregex_iterator found(line.begin(), line.end(), literal), end; found != end; ++found) {
    const std::string inside = (*found)[1];
    if (!kNames.contains(inside) && std::regex_search(inside, words)) return true;
  }
  return false;
}

/// Lines of a file whose literals hold words, outside comments.
int lines_with_words(const std::string& text) {
  int count = 0;
  for (const std::string& line : lines_of(text)) {
    const std::size_t begin = line.find_first_not_of(' ');
    if (begin == std::string::npos || line.compare(begin, 2, "//") == 0 || line[begin] == '#') continue;
    count += holds_words(line.substr(0, line.find(" //"))) ? 1 : 0;
  }
  return count;
}

/// Rooms whose words are shown. The desk's, the records' and the level checks' are a contract, and English.
const std::vector<std::string> kRoomsThatShow = {"game/scenes", "game/session", "game/marking",
                                                 "game/demonstrator"};

/// Of these nothing is shown on a screen: the command line, faults of files and machines, names of deeds.
const std::set<std::string> kShownNowhere = {
    "game/demonstrator/at_bench.cpp", "game/demonstrator/knowing.cpp", "game/demonstrator/wager_rounds.cpp",
    "game/demonstrator/pencil.cpp",   "game/demonstrator/routine.cpp", "game/demonstrator/titration.cpp",
    "game/scenes/attempt_shelf.cpp",  "game/scenes/display_probe.cpp", "game/scenes/drop_strip.cpp",
    "game/scenes/fonts.cpp",          "game/scenes/one_drop.cpp",      "game/scenes/options.cpp",
    "game/scenes/page_picture.cpp",   "game/scenes/still_picture.cpp", "game/session/action.cpp",
    "game/session/replay.cpp"};

/// Files whose words are still to be moved, with the number of their lines. May only shrink.
const std::map<std::string, int> kStillHoldWords = {};

}  // namespace

TEST_CASE("every key in the code is in en.json, and every key of en.json in the code") {
  const auto english = texts_of("en");
  const auto sections = sections_of(english);
  std::set<std::string> used = {"language.name"};  // for who reads the file
  for (const SourceFile& file : sources_below({"game"})) {
    for (const Use& use : uses_in(file, sections)) {
      CHECK_MESSAGE(english.contains(use.key), file.path << " says " << use.key << ": en.json lacks it");
      used.insert(use.key);
    }
  }
  for (const auto& [key, text] : english)
    CHECK_MESSAGE(used.contains(key), "en.json has " << key << ": nothing says it");
}

TEST_CASE("what is filled in has a blank for each name, and each blank is filled in") {
  const auto english = texts_of("en");
  const auto sections = sections_of(english);
  for (const SourceFile& file : sources_below({"game"})) {
    for (const Use& use : uses_in(file, sections)) {
      if (!english.contains(use.key)) continue;
      CAPTURE(file.path);
      CAPTURE(use.key);
      CHECK(use.blanks == blanks_of(english.at(use.key)));
      CHECK(use.gives_blanks == !use.blanks.empty());
    }
  }
}

TEST_CASE("the reader of keys sees what it is to see") {
  const std::set<std::string> sections = {"sheet"};
  const auto uses =
      uses_in({"a.cpp",
               "f(\"sheet.run\", g); say(\"sheet.of\",\n {{\"run\", x}, {\"of\", say(\"sheet.a\", "
               "{{\"b\", \"c\"}})}}); \"schema.json\""},
              sections);
  REQUIRE(uses.size() == 3);
  CHECK_FALSE(uses[0].gives_blanks);
  CHECK(uses[1].blanks == std::set<std::string>{"of", "run"});
  CHECK(uses[2].blanks == std::set<std::string>{"b"});
  CHECK(lines_with_words(
            "x(\"Shut the tap.\");\n// \"Shut the tap.\"\n#include \"a b\"\ny(\"sheet.run\");\n") == 1);
}

TEST_CASE("every other language has the English keys and blanks") {
  const auto english = texts_of("en"), german = texts_of("de");
  CHECK(english.size() == german.size());
  for (const auto& [key, text] : english) {
    CAPTURE(key);
    const bool there = german.contains(key);
    CHECK(there);
    if (there) CHECK(blanks_of(german.at(key)) == blanks_of(text));
  }
}

TEST_CASE("words stand in assets/text, and what still stands in the code becomes less") {
  for (const SourceFile& file : sources_below(kRoomsThatShow)) {
    if (kShownNowhere.contains(file.path)) continue;
    const int lines = lines_with_words(file.text);
    const auto known = kStillHoldWords.find(file.path);
    const int most = known == kStillHoldWords.end() ? 0 : known->second;
    CHECK_MESSAGE(lines <= most,
                  file.path << " holds words in " << lines << " lines: move them to assets/text");
    CHECK_MESSAGE(lines >= most, file.path << " holds words in " << lines << " lines: lower kStillHoldWords");
  }
}

}  // namespace halfdrop::house
