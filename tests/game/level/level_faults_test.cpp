// Every way to get a level wrong that we could think of, as a JSON Patch (RFC 6902) of the good one.

#include <doctest/doctest.h>

#include "game/level/level_fields.h"
#include "tests/support/good_level.h"
#include "tests/support/json.h"

using namespace halfdrop;
using namespace halfdrop::test;

namespace {

struct BadLevel {
  const char* what;
  const char* patch;
  const char* pointer;
  const char* words;  ///< part of the message
};

constexpr BadLevel kBadLevels[] = {
    {"a key of the wrong name", R"([{"op":"move","from":"/ratio","path":"/ration"}])", "/ration",
     "did you mean \"ratio\"?"},
    {"... and the right one missing", R"([{"op":"move","from":"/ratio","path":"/ration"}])", "/ratio",
     "missing"},
    {"a key nobody knows", R"([{"op":"add","path":"/difficulty","value":3}])", "/difficulty",
     "known here: title"},
    {"an unknown key deep inside", R"([{"op":"add","path":"/bands/eye/1/colour","value":"red"}])",
     "/bands/eye/1/colour", "unknown key"},
    {"an id of its own", R"([{"op":"add","path":"/id","value":"x"}])", "/id", "name of its file"},
    {"a text for a number", R"([{"op":"replace","path":"/ratio","value":"1"}])", "/ratio", "found a text"},
    {"a number for a text", R"([{"op":"replace","path":"/title","value":1}])", "/title", "found a number"},
    {"null for a number", R"([{"op":"replace","path":"/dilution","value":null}])", "/dilution", "found null"},
    {"a number for true or false", R"([{"op":"replace","path":"/endpoint/gains_colour","value":1}])",
     "/endpoint/gains_colour", "true or false"},
    {"an array for an object", R"([{"op":"replace","path":"/titrant","value":[]}])", "/titrant",
     "found an array"},
    {"an object for an array", R"([{"op":"replace","path":"/cautions","value":{}}])", "/cautions",
     "found an object"},
    {"a broken number of runs", R"([{"op":"replace","path":"/accurate_runs","value":2.5}])", "/accurate_runs",
     "whole number from 2 to 8, found 2.5"},
    {"more runs than an int holds", R"([{"op":"replace","path":"/accurate_runs","value":4294967298}])",
     "/accurate_runs", "found 4294967298"},
    {"more runs than 64 bits hold", R"([{"op":"replace","path":"/accurate_runs","value":1e30}])",
     "/accurate_runs", "found 1e+30"},
    {"fewer runs than none", R"([{"op":"replace","path":"/accurate_runs","value":-3}])", "/accurate_runs",
     "found -3"},
    {"a bench on the boil", R"([{"op":"replace","path":"/temperature_c","value":100}])", "/temperature_c",
     "from 5 to 40, found 100"},
    {"a bench in the cold", R"([{"op":"replace","path":"/temperature_c","value":4.9}])", "/temperature_c",
     "from 5 to 40, found 4.9"},
    {"a negative strength", R"([{"op":"replace","path":"/titrant/mol_dm3","value":-0.1}])",
     "/titrant/mol_dm3", "found -0.1"},
    {"an empty title", R"([{"op":"replace","path":"/title","value":""}])", "/title", "1 to 80 characters"},
    {"no cautions", R"([{"op":"replace","path":"/cautions","value":[]}])", "/cautions",
     "array of 1 to 20, found 0"},
    {"an empty caution", R"([{"op":"replace","path":"/cautions/1","value":""}])", "/cautions/1",
     "characters"},
    {"an unknown substance", R"([{"op":"replace","path":"/sample/substance","value":"ethanoik acid"}])",
     "/sample/substance", "did you mean \"ethanoic acid\"?"},
    {"a substance nobody has", R"([{"op":"replace","path":"/titrant/substance","value":"lemonade"}])",
     "/titrant/substance", "unknown substance \"lemonade\""},
    {"more of an unknown than dissolves",
     R"([{"op":"replace","path":"/sample/substance","value":"benzoic acid"}])", "/sample/unknown_mol_dm3/1",
     "benzoic acid dissolves to about 0.028 mol/dm3"},
    {"a label for more than dissolves",
     R"([{"op":"replace","path":"/titrant/substance","value":"calcium hydroxide"}])", "/titrant/mol_dm3",
     "calcium hydroxide dissolves to about 0.023 mol/dm3"},
    {"an unknown indicator", R"([{"op":"replace","path":"/indicator","value":"phenolphtalein"}])",
     "/indicator", "did you mean \"phenolphthalein\"?"},
    {"a range upside down", R"([{"op":"replace","path":"/sample/unknown_mol_dm3","value":[0.096,0.076]}])",
     "/sample/unknown_mol_dm3", "lowest above the highest"},
    {"a range of one", R"([{"op":"replace","path":"/sample/unknown_mol_dm3","value":[0.09]}])",
     "/sample/unknown_mol_dm3", "array of 2, found 1"},
    {"a range off the grid", R"([{"op":"replace","path":"/sample/unknown_mol_dm3/0","value":0.07605}])",
     "/sample/unknown_mol_dm3/0", "multiple of 0.0001"},
    {"an unknown with a label strength", R"([{"op":"add","path":"/sample/mol_dm3","value":0.08}])",
     "/sample/mol_dm3", "an unknown has no strength"},
    {"two unknowns",
     R"([{"op":"remove","path":"/titrant/mol_dm3"},{"op":"add","path":"/titrant/unknown_mol_dm3","value":[0.1,0.1]}])",
     "", "in both"},
    {"no unknown",
     R"([{"op":"remove","path":"/sample/unknown_mol_dm3"},{"op":"add","path":"/sample/mol_dm3","value":0.08}])",
     "", "in neither"},
    {"a titre past the last mark", R"([{"op":"replace","path":"/titrant/mol_dm3","value":0.04}])",
     "/sample/unknown_mol_dm3", "the titre can come to 60 cm3"},
    {"a flask that runs over", R"([{"op":"add","path":"/flask","value":{"capacity_cm3":40}}])",
     "/sample/unknown_mol_dm3", "more than the flask's 40"},
    {"a capacity the flask's shape does not hold",
     R"([{"op":"add","path":"/flask","value":{"capacity_cm3":900}}])", "/flask", "shape holds"},
    {"a neck wider than its flask", R"([{"op":"add","path":"/flask","value":{"neck_radius_cm":5}}])",
     "/flask", "wider than the base"},
    {"a tap that is all hole", R"([{"op":"add","path":"/tap","value":{"bore_mm":5,"plug_mm":4}}])", "/tap",
     "as wide as the plug"},
    {"a tap that never shuts", R"([{"op":"add","path":"/tap","value":{"plug_mm":3}}])", "/tap",
     "turned across, the tap still passes liquid"},
    {"a tap whose play keeps it from shutting",
     R"([{"op":"add","path":"/tap","value":{"plug_mm":4,"loose_degrees":20}}])", "/tap",
     "turned across, the tap still passes liquid"},
    {"a scale that no eye gets down to", R"([{"op":"add","path":"/burette/scale_length_mm","value":701}])",
     "/burette/scale_length_mm", "from 100 to 700"},
    {"a tip beyond what is known of drops", R"([{"op":"add","path":"/tap","value":{"tip_outer_mm":4.5}}])",
     "/tap/tip_outer_mm", "from 2 to 4"},
    {"a burette of a metre's width", R"([{"op":"add","path":"/burette/outer_half_width_mm","value":500}])",
     "/burette/outer_half_width_mm", "from 2 to 20"},
    {"a drawn error of the scale, set by hand",
     R"([{"op":"add","path":"/burette/scale_bow_cm3","value":0.1}])", "/burette/scale_bow_cm3",
     "unknown key"},
    {"a factor that no step or value has",
     R"([{"op":"replace","path":"/calculation/1/multiply/0","value":"titrant_mol_dm"}])",
     "/calculation/1/multiply/0", "did you mean \"titrant_mol_dm3\"?"},
    {"a factor from a later step",
     R"([{"op":"replace","path":"/calculation/1/multiply/0","value":"calculation/moles of acid"}])",
     "/calculation/1/multiply/0", "unknown value"},
    {"the unknown as a factor",
     R"([{"op":"replace","path":"/calculation/1/multiply/0","value":"sample_mol_dm3"}])",
     "/calculation/1/multiply/0", "is the unknown"},
    {"a factor that is no factor", R"([{"op":"replace","path":"/calculation/1/divide/0","value":true}])",
     "/calculation/1/divide/0", "found true"},
    {"a division by nothing", R"([{"op":"replace","path":"/calculation/1/divide/0","value":0}])",
     "/calculation/1/divide/0", "found 0"},
    {"a step without factors", R"([{"op":"remove","path":"/calculation/1/multiply"}])",
     "/calculation/1/multiply", "missing"},
    {"a step that only takes away", R"([{"op":"replace","path":"/calculation/1","value":
      {"cell":"calculation/moles of alkali","prompt":"x","unit":"mol","least_figures":3,"minus":[1]}}])",
     "/calculation/1/multiply", "missing"},
    {"nothing to divide", R"([{"op":"replace","path":"/calculation/1","value":
      {"cell":"calculation/moles of alkali","prompt":"x","unit":"mol","least_figures":3,"plus":[1],"divide":[2]}}])",
     "/calculation/1/divide", "nothing to divide"},
    {"a term that no step or value has",
     R"([{"op":"add","path":"/calculation/1/plus","value":["dilutions"]}])", "/calculation/1/plus/0",
     "did you mean \"dilution\"?"},
    {"a term that is no term", R"([{"op":"add","path":"/calculation/1/minus","value":[null]}])",
     "/calculation/1/minus/0", "found null"},
    {"a constant that no step names", R"([{"op":"add","path":"/constants","value":
      [{"name":"drum","value":25,"unit":"dm³","label":"the drum"}]}])",
     "/constants/0/name", "no step names \"drum\""},
    {"a constant that is nowhere told", R"([{"op":"add","path":"/constants","value":
      [{"name":"drum","value":27,"unit":"dm³","label":"the drum"}]},
      {"op":"add","path":"/calculation/4/multiply/2","value":"drum"}])",
     "/constants/0/value", "give 27 dm³ (the drum)"},
    {"a constant by the name of a value", R"([{"op":"add","path":"/constants","value":
      [{"name":"ratio","value":25,"unit":"dm³","label":"the drum"}]}])",
     "/constants/0/name", "is taken"},
    {"a slip in a constant's name", R"([{"op":"add","path":"/constants","value":
      [{"name":"drum","value":25,"unit":"dm³","label":"the drum"}]},
      {"op":"add","path":"/calculation/4/multiply/2","value":"drums"}])",
     "/calculation/4/multiply/2", "did you mean \"drum\"?"},
    {"an unknown substance beside the sample", R"([{"op":"add","path":"/sample/also","value":
      [{"substance":"lactik acid","mol_dm3":0.01}]}])",
     "/sample/also/0/substance", "did you mean \"lactic acid\"?"},
    {"more beside the sample than dissolves", R"([{"op":"add","path":"/sample/also","value":
      [{"substance":"benzoic acid","mol_dm3":0.03}]}])",
     "/sample/also/0/mol_dm3", "benzoic acid dissolves to about 0.028 mol/dm3"},
    {"a key nobody knows beside the sample", R"([{"op":"add","path":"/sample/also","value":
      [{"substance":"lactic acid","mol_dm3":0.01,"label":"x"}]}])",
     "/sample/also/0/label", "unknown key"},
    {"a mean titre with factors", R"([{"op":"add","path":"/calculation/0/multiply","value":[2]}])",
     "/calculation/0", "leave multiply and divide out"},
    {"a working that does not begin with the mean titre", R"([{"op":"remove","path":"/calculation/0"}])",
     "/calculation/0/cell", "as the first step"},
    {"a cell outside the working",
     R"([{"op":"replace","path":"/calculation/1/cell","value":"trial/initial"}])", "/calculation/1/cell",
     "expected \"calculation/\""},
    {"two steps of one name",
     R"([{"op":"replace","path":"/calculation/2/cell","value":"calculation/moles of alkali"}])",
     "/calculation/2/cell", "stands in two steps"},
    {"bands that do not widen", R"([{"op":"replace","path":"/bands/hand/1/within_cm3","value":0.05}])",
     "/bands/hand/1", "wider limit"},
    {"a wider band with more points", R"([{"op":"replace","path":"/bands/eye/2/points","value":3}])",
     "/bands/eye/2", "fewer points"},
};

std::string words_at(const std::vector<Fault>& faults, const std::string& place) {
  std::string words;
  for (const Fault& fault : faults) {
    if (fault.place == place) words += fault.message + "\n";
  }
  return words;
}

}  // namespace

TEST_SUITE("faults of levels") {
  TEST_CASE("each bad level is told at its JSON pointer, in words that say what was expected") {
    const TemporaryFolder folder;
    const std::string good = text_of(good_level_path());
    for (const BadLevel& bad : kBadLevels) {
      CAPTURE(bad.what);
      const auto read = read_level(folder.file("patched.json", patched(good, bad.patch)));
      REQUIRE_FALSE(read.has_value());
      CAPTURE(all_of(read.error()));
      CHECK(words_at(read.error(), bad.pointer).find(bad.words) != std::string::npos);
      CHECK(exit_status(read.error()) == 1);
    }
  }
  TEST_CASE("a slip causes no fault elsewhere") {
    const TemporaryFolder folder;
    const std::string good = text_of(good_level_path());
    for (const BadLevel& bad : kBadLevels) {
      CAPTURE(bad.what);
      const auto read = read_level(folder.file("patched.json", patched(good, bad.patch)));
      REQUIRE_FALSE(read.has_value());
      CAPTURE(all_of(read.error()));
      // A renamed key is two faults; so is a working without its first step, whose name others use.
      CHECK(read.error().size() <= 2);
    }
  }
  TEST_CASE("several faults are told all at once") {
    const TemporaryFolder folder;
    const auto read =
        read_level(folder.file("many.json", R"({"title":1,"ratio":"x","colour":2,"accurate_runs":99})"));
    REQUIRE_FALSE(read.has_value());
    for (const char* place :
         {"/title", "/ratio", "/colour", "/accurate_runs", "/story", "/titrant", "/bands"}) {
      CAPTURE(place);
      CHECK(has_fault_at(read.error(), place));
    }
  }
  TEST_CASE("JSON that is no object is a fault") {
    const TemporaryFolder folder;
    for (const char* text : {"[]", "3", "null", "\"level\"", "true"}) {
      CAPTURE(text);
      const auto read = read_level(folder.file("no_object.json", text));
      REQUIRE_FALSE(read.has_value());
      REQUIRE(read.error().size() == 1);
      CHECK(read.error()[0].place.empty());
      CHECK(exit_status(read.error()) == 1);
    }
  }
  TEST_CASE("a level over one megabyte is not read") {
    const TemporaryFolder folder;
    const auto read = read_level(folder.file("long.json", std::string(1'100'000, ' ')));
    REQUIRE_FALSE(read.has_value());
    CHECK(exit_status(read.error()) == 3);
  }
  TEST_CASE("the files in tests/bad_levels have the fault their name says") {
    struct BadFile {
      const char* file;
      const char* place;
      int status;
    };
    constexpr BadFile kFiles[] = {{"not-json.json", "line 4", 3},
                                  {"cut-short.json", "line 12", 3},
                                  {"doubled-key.json", "/titrant/label", 1},
                                  {"unknown-key.json", "/titrent", 1},
                                  {"wrong-type.json", "/aliquot_cm3", 1},
                                  {"out-of-range.json", "/temperature_c", 1},
                                  {"unknown-substance.json", "/sample/substance", 1},
                                  {"nested-too-deep.json",
                                   "/cautions"
                                   "/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0"
                                   "/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0",
                                   3}};
    for (const BadFile& bad : kFiles) {
      CAPTURE(bad.file);
      const auto read = read_level(source_file("tests/bad_levels/") + bad.file);
      REQUIRE_FALSE(read.has_value());
      CAPTURE(all_of(read.error()));
      CHECK(has_fault_at(read.error(), bad.place));
      CHECK(exit_status(read.error()) == bad.status);
    }
  }
  TEST_CASE("a level that is not there cannot be opened") {
    const auto read = read_level("/nowhere/01-nothing.json");
    REQUIRE_FALSE(read.has_value());
    CHECK(read.error()[0].kind == FaultKind::cannot_open);
    CHECK(exit_status(read.error()) == 3);
  }
}
