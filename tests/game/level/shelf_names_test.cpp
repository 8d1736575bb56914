#include "game/level/shelf_names.h"

#include <doctest/doctest.h>

#include <filesystem>

#include "tests/support/good_level.h"
#include "tests/support/json.h"
#include "tests/support/shelf.h"

namespace halfdrop::test {
namespace {

std::string found(std::string_view name) {
  const auto* const substance = find_on(shelf().substances, name);
  return substance == nullptr ? "nothing" : substance->value.name;
}

/// The faults of a shelf whose substances are patched so.
std::vector<Fault> faults_with(const char* patch) {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder.file("assets"));
  const std::string good = text_of(source_file("assets/substances.json"));
  static_cast<void>(folder.file("assets/substances.json", patched(good, patch)));
  static_cast<void>(folder.file("assets/indicators.json", text_of(source_file("assets/indicators.json"))));
  const Result<Assets> read = read_assets(folder.file(""));
  return read ? std::vector<Fault>{} : read.error();
}

}  // namespace

// Common practice: names on bottles.
TEST_CASE("a substance goes by its other names and by its formula") {
  CHECK(found("ethanoic acid") == "ethanoic acid");
  CHECK(found("acetic acid") == "ethanoic acid");
  CHECK(found("sodium bicarbonate") == "sodium hydrogencarbonate");
  CHECK(found("caustic soda") == "sodium hydroxide");
  CHECK(found("NaOH") == "sodium hydroxide");
  CHECK(found("HCl") == "hydrochloric acid");
  CHECK(found("KHP") == "potassium hydrogen phthalate");
  CHECK(found("sulphuric acid") == "sulfuric acid");
  CHECK(found("CO") == "nothing");
  CHECK(found("") == "nothing");
  REQUIRE(find_on(shelf().indicators, "bromthymol blue") != nullptr);
  CHECK(find_on(shelf().indicators, "bromthymol blue")->value.name == "bromothymol blue");
}

TEST_CASE("a name is found whatever its capitals, a formula letter by letter") {
  CHECK(found("ETHANOIC ACID") == "ethanoic acid");
  CHECK(found("Acetic Acid") == "ethanoic acid");
  CHECK(found("khp") == "potassium hydrogen phthalate");
  CHECK(found("NAOH") == "nothing");
  REQUIRE(find_on(shelf().indicators, "Methyl Orange") != nullptr);
  CHECK(find_on(shelf().indicators, "Methyl Orange")->value.name == "methyl orange");
}

TEST_CASE("a formula that two substances have names neither") {
  Shelf<Substance> two;
  for (const char* name : {"left lactic acid", "right lactic acid"}) {
    two[name].value.name = name;
    two[name].value.formula = "CH3CH(OH)COOH";
  }
  CHECK(find_on(two, "CH3CH(OH)COOH") == nullptr);
  CHECK(find_on(two, "left lactic acid") == &two["left lactic acid"]);
}

TEST_CASE("what is meant is guessed from a slip, and never another chemical") {
  const auto answer = [](const char* name) { return unknown_on(shelf().substances, name); };
  CHECK(answer("acetik acid") == "unknown substance \"acetik acid\"; did you mean \"acetic acid\"?");
  CHECK(answer("HCL") == "unknown substance \"HCL\"; did you mean \"HCl\"?");
  CHECK(answer("ACETIK ACID").ends_with("; did you mean \"acetic acid\"?"));
  for (const char* name : {"formic acid", "KCl", "sodium sulfate"})
    CHECK(answer(name).find("; known, nearest first: ") != std::string::npos);
  // "Sodium acetate" is another name of sodium ethanoate, "sodium borate" of borax.
  CHECK(answer("sodium sulfate").find("first: borax, sodium ethanoate, ") != std::string::npos);
  CHECK(unknown_on(shelf().indicators, "methil orange").find("\"methyl orange\"?") != std::string::npos);
}

TEST_CASE("other names are read strictly, and each is one thing's only") {
  CHECK(faults_with("[]").empty());
  const struct {
    const char *patch, *place;
  } bad[] = {
      {R"([{"op":"replace","path":"/ammonia/also_called","value":"spirit"}])", "/ammonia/also_called"},
      {R"([{"op":"replace","path":"/ammonia/also_called","value":[]}])", "/ammonia/also_called"},
      {R"([{"op":"replace","path":"/ammonia/also_called","value":[""]}])", "/ammonia/also_called/0"},
      {R"([{"op":"replace","path":"/ammonia/also_called","value":[3]}])", "/ammonia/also_called/0"},
      {R"([{"op":"replace","path":"/ammonia/also_called","value":["spirit","spirit"]}])",
       "/ammonia/also_called/1"},
      {R"([{"op":"replace","path":"/ammonia/also_called","value":["borax"]}])", "/ammonia/also_called/0"},
      {R"([{"op":"replace","path":"/ammonia/also_called","value":["Borax"]}])", "/ammonia/also_called/0"},
      {R"([{"op":"replace","path":"/sulfuric acid/also_called","value":["acetic acid"]}])",
       "/sulfuric acid/also_called/0"}};
  for (const auto& one : bad) {
    CAPTURE(std::string(one.patch));
    const std::vector<Fault> faults = faults_with(one.patch);
    CHECK(faults.size() == 1);
    CHECK_MESSAGE(has_fault_at(faults, one.place), all_of(faults));
  }
}

TEST_CASE("a level may use any name; what is shown and kept is the shelf's own") {
  const TemporaryFolder folder;
  const std::string other_names = R"([{"op":"replace","path":"/sample/substance","value":"acetic acid"},
                                      {"op":"replace","path":"/titrant/substance","value":"NaOH"}])";
  const Result<Level> level =
      read_level(folder.file("mine.json", patched(text_of(good_level_path()), other_names)));
  REQUIRE_MESSAGE(level.has_value(), why_not(level));
  CHECK(level->sample.substance == "ethanoic acid");
  CHECK(level->titrant.substance == "sodium hydroxide");
  CHECK(level->substances_json == good_level().substances_json);
  // As an attempt carries it.
  const Result<Level> again = read_level_text(level->source_json, level->substances_json, "attempt");
  REQUIRE_MESSAGE(again.has_value(), why_not(again));
  CHECK(again->sample.substance == "ethanoic acid");
  CHECK(again->titrant.substance == "sodium hydroxide");
  CHECK(again->substances_json == level->substances_json);
}

}  // namespace halfdrop::test
