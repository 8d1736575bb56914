#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "game/level/assets.h"
#include "tests/support/good_level.h"
#include "tests/support/json.h"

namespace halfdrop::test {
namespace {

Json methyl_orange() { return json_of(text_of(source_file("assets/indicators.json")))["methyl orange"]; }

std::vector<Fault> faults_of(const std::string& name, const Json& entry, Indicator& read) {
  FaultList faults("indicators.json");
  read = read_indicator(name, entry, "/" + name, faults);
  return faults.take();
}

}  // namespace

TEST_CASE("a bad indicator is told at its JSON pointer") {
  const struct {
    const char *patch, *place;
  } bad[] = {
      {R"([{"op":"replace","path":"/ranges/0/ph","value":[4.4,3.1]}])", "/methyl orange/ranges/0/ph"},
      {R"([{"op":"replace","path":"/ranges/0/ph","value":[3.1]}])", "/methyl orange/ranges/0/ph"},
      {R"([{"op":"replace","path":"/ranges/0/ph/1","value":44}])", "/methyl orange/ranges/0/ph/1"},
      {R"([{"op":"remove","path":"/ranges/0/source"}])", "/methyl orange/ranges/0/source"},
      {R"([{"op":"remove","path":"/ranges"}])", "/methyl orange/ranges"},
      {R"([{"op":"replace","path":"/bands/0/form","value":"some"}])", "/methyl orange/bands/0/form"},
      {R"([{"op":"replace","path":"/bands/0/form","value":-1}])", "/methyl orange/bands/0/form"},
      {R"([{"op":"add","path":"/bands/0/mol_per_mol","value":2}])", "/methyl orange/bands/0/mol_per_mol"},
      {R"([{"op":"replace","path":"/bands/0/width_nm","value":0}])", "/methyl orange/bands/0/width_nm"},
      {R"([{"op":"replace","path":"/strong_charge","value":"+"}])", "/methyl orange/strong_charge"},
      {R"([{"op":"replace","path":"/stock/mol_dm3","value":-1}])", "/methyl orange/stock/mol_dm3"},
      {R"([{"op":"add","path":"/smell","value":"none"}])", "/methyl orange/smell"},
  };
  const std::string good = compact(methyl_orange());
  for (const auto& one : bad) {
    CAPTURE(std::string(one.patch));
    Indicator read;
    const auto faults = faults_of("methyl orange", json_of(patched(good, one.patch)), read);
    CHECK_MESSAGE(has_fault_at(faults, one.place), all_of(faults));
  }
}

TEST_CASE("a dye that does not change needs no C++: it colours every form by its amount") {
  Json entry = methyl_orange();
  entry["bands"].push_back({{"form", "every"},
                            {"mol_per_mol", 0.5},
                            {"peak_nm", 600},
                            {"width_nm", 30},
                            {"epsilon_dm3_mol_cm", 20000},
                            {"source", "made up for this test"}});
  Indicator made;
  const auto faults = faults_of("made up", entry, made);
  REQUIRE_MESSAGE(faults.empty(), all_of(faults));
  REQUIRE(made.bands.size() == 3);
  CHECK(made.bands.back().form == AbsorptionBand::kEveryForm);
  CHECK(made.bands.back().mol_per_mol == 0.5);
}

}  // namespace halfdrop::test
