// Levels that are drills: what is read, what is refused, and what a seed draws.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "physics/bench/hands.h"
#include "tests/support/drill_level.h"
#include "tests/support/json.h"

using namespace halfdrop;
using namespace halfdrop::test;

namespace {

struct BadDrill {
  const char* what;
  DrillKind kind;
  const char* patch;
  const char* pointer;
  const char* words;  ///< part of the message
};

constexpr DrillKind kRead = DrillKind::read_meniscus, kDeliver = DrillKind::deliver_exactly,
                    kFill = DrillKind::fill_without_air, kKnow = DrillKind::know_apparatus;

constexpr BadDrill kBadDrills[] = {
    {"a drill nobody knows", kFill, R"([{"op":"replace","path":"/drill/kind","value":"fill without hair"}])",
     "/drill/kind", "did you mean \"fill without air\"?"},
    {"no kind", kFill, R"([{"op":"remove","path":"/drill/kind"}])", "/drill/kind", "missing"},
    {"no object", kFill, R"([{"op":"replace","path":"/drill","value":"fill without air"}])", "/drill",
     "found a text"},
    {"pictures where none are read", kFill, R"([{"op":"add","path":"/drill/pictures","value":30}])",
     "/drill/pictures", "unknown key"},
    {"a titrant", kRead, R"([{"op":"add","path":"/titrant","value":{}}])", "/titrant", "no titration"},
    {"a calculation", kDeliver, R"([{"op":"add","path":"/calculation","value":[]}])", "/calculation",
     "no titration"},
    {"a ratio", kFill, R"([{"op":"add","path":"/ratio","value":1}])", "/ratio", "no titration"},
    {"bands for the hand of one who only reads", kRead, R"([{"op":"add","path":"/bands/hand","value":[]}])",
     "/bands/hand", "leave this key out"},
    {"bands for the eye of one who only delivers", kDeliver,
     R"([{"op":"add","path":"/bands/eye","value":[]}])", "/bands/eye", "leave this key out"},
    {"bands where points are the drill's own", kKnow, R"([{"op":"add","path":"/bands","value":{}}])",
     "/bands", "leave this key out"},
    {"a rule of filling where nothing is filled", kKnow,
     R"([{"op":"add","path":"/filling","value":"below eye level"}])", "/filling", "leave this key out"},
    {"a rule of filling that nobody knows", kFill,
     R"([{"op":"replace","path":"/filling","value":"on a stool"}])", "/filling",
     "expected \"below eye level\""},
    {"no bands", kRead, R"([{"op":"remove","path":"/bands"}])", "/bands", "missing"},
    {"too few pictures to say anything", kRead, R"([{"op":"replace","path":"/drill/pictures","value":9}])",
     "/drill/pictures", "from 10 to 100"},
    {"readings to a tenth", kRead, R"([{"op":"replace","path":"/drill/to_cm3","value":0.02}])",
     "/drill/to_cm3", "expected 0.05 or 0.01"},
    {"a third of a drop", kDeliver, R"([{"op":"replace","path":"/drill/deliver/2","value":"a third"}])",
     "/drill/deliver/2", "\"half a drop\""},
    {"nothing to deliver", kDeliver, R"([{"op":"replace","path":"/drill/deliver","value":[]}])",
     "/drill/deliver", "array of 1 to 8"},
    {"a volume below any mark", kDeliver, R"([{"op":"replace","path":"/drill/deliver/0","value":0.1}])",
     "/drill/deliver/0", "from 0.5 to 50"},
    {"more than the burette holds", kDeliver, R"([{"op":"replace","path":"/drill/deliver/0","value":47}])",
     "/drill/deliver", "more than the burette's 50 cm3"},
    {"bands that widen and pay more", kDeliver,
     R"([{"op":"replace","path":"/drill/drop_bands/1/points","value":9}])", "/drill/drop_bands/1",
     "fewer points"}};

std::vector<Fault> faults_of(DrillKind kind, const std::string& patch) {
  const TemporaryFolder folder;
  const auto level = read_level(folder.file("drill.json", patched(text_of(drill_path(kind)), patch)));
  return level ? std::vector<Fault>() : level.error();
}

}  // namespace

TEST_SUITE("drills as levels") {
  TEST_CASE("the three drills are read, and carry no chemicals") {
    const Level read = drill_level(kRead), deliver = drill_level(kDeliver), fill = drill_level(kFill);
    CHECK(read.drill->kind == kRead);
    CHECK(read.drill->pictures == 30);
    CHECK(deliver.drill->deliveries.size() == 4);
    CHECK(deliver.drill->deliveries[3].what == Delivery::What::half_drop);
    CHECK(fill.drill->kind == kFill);
    for (const Level& level : {read, deliver, fill}) {
      CHECK(level.substances_json == "{}");
      const auto again = read_level_text(level.source_json, level.substances_json, "attempt");
      REQUIRE_MESSAGE(again.has_value(), all_of(again.error()));
      CHECK(again->drill->kind == level.drill->kind);
      CHECK(again->id == level.id);
    }
  }
  TEST_CASE("every way to get a drill wrong is a fault at its place") {
    for (const BadDrill& bad : kBadDrills) {
      CAPTURE(bad.what);
      const auto faults = faults_of(bad.kind, bad.patch);
      const auto at = std::find_if(faults.begin(), faults.end(), [&](const Fault& fault) {
        return fault.place == bad.pointer && fault.message.find(bad.words) != std::string::npos;
      });
      CHECK_MESSAGE(at != faults.end(), all_of(faults));
    }
  }
  TEST_CASE("a drill's faults are all said at once") {
    const auto faults =
        faults_of(kDeliver, R"([{"op":"replace","path":"/drill/deliver/2","value":"two drops"},
                      {"op":"add","path":"/ratio","value":1}, {"op":"add","path":"/indicator","value":"litmus"},
                      {"op":"remove","path":"/title"}, {"op":"add","path":"/drill/picture","value":3}])");
    for (const char* place : {"/drill/deliver/2", "/ratio", "/indicator", "/title", "/drill/picture"})
      CHECK_MESSAGE(has_fault_at(faults, place), place);
    CHECK(faults.size() == 5);
  }
  TEST_CASE("pictures lie over the whole scale, one in each part of it, and no eye starts level") {
    const Level level = drill_level(kRead);
    int out = 0;
    for (const std::uint64_t seed : {1ULL, 2ULL, 99ULL}) {
      const BenchSpec spec = bench_spec(level, seed);
      REQUIRE(spec.drill.pictures.size() == 30);
      std::set<int> parts;
      const double mm_per_cm3 = spec.burette.scale_length_mm / spec.burette.nominal_cm3;
      for (const MeniscusPicture& picture : spec.drill.pictures) {
        CHECK(picture.reading_cm3 >= 0.0);
        CHECK(picture.reading_cm3 <= 50.0);
        parts.insert(static_cast<int>(30.0 * (picture.reading_cm3 - 0.02) / 49.96));
        const double eye_off_mm = std::fabs(picture.eye_mm + picture.reading_cm3 * mm_per_cm3);
        CHECK(eye_off_mm >= 15.0);
        CHECK(eye_off_mm <= 80.0);
        CHECK(picture.card_mm >= kEyeLowest_mm);
        out += picture.card_mm + picture.reading_cm3 * mm_per_cm3 > 100.0 ? 1 : 0;
      }
      CHECK(parts.size() == 30);
    }
    CHECK(out > 15);  // of 90, about every third
    CHECK(out < 45);
  }
  TEST_CASE("another seed draws other pictures, the same seed the same") {
    const Level level = drill_level(kRead);
    const auto first = bench_spec(level, 5).drill.pictures, same = bench_spec(level, 5).drill.pictures;
    const auto other = bench_spec(level, 6).drill.pictures;
    for (std::size_t i = 0; i < first.size(); ++i) CHECK(first[i].reading_cm3 == same[i].reading_cm3);
    CHECK(first.front().reading_cm3 != other.front().reading_cm3);
  }
  TEST_CASE("a burette for delivering is filled to between the marks 0.10 and 1.00") {
    const Level level = drill_level(kDeliver);
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      const auto filled = bench_spec(level, seed).drill.filled_to_cm3;
      REQUIRE(filled.has_value());
      CHECK(*filled >= 0.1);
      CHECK(*filled < 1.0);
    }
  }
}
