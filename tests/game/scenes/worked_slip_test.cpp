#include "game/scenes/worked_slip.h"

#include <chrono>
#include <filesystem>

#include "game/records/attempt_file.h"
#include "game/session/session.h"
#include "tests/support/good_level.h"

using namespace halfdrop;

namespace {

constexpr const char* kWorking[][2] = {{"calculation/mean titre", "20.00"},
                                       {"calculation/moles of alkali", "0.002000"},
                                       {"calculation/moles of acid", "0.002000"},
                                       {"calculation/diluted vinegar", "0.08000"},
                                       {"calculation/spirit vinegar", "0.800"}};

/// Puts an attempt on the shelf whose working is right in its first `right` lines; each file is a second
/// younger than the one before.
void hand_in(const test::TemporaryFolder& shelf, int number, std::size_t right,
             const std::string& alias = "kim", bool handed_in = true) {
  Session session(test::good_level(), 1, alias);
  for (const auto& [cell, text] :
       {std::pair{"1/initial", "0.00"}, {"1/final", "20.00"}, {"1/titre", "20.00"}}) {
    REQUIRE_FALSE(session.write({cell, text}).has_value());
  }
  REQUIRE_FALSE(session.write({"1/counts", "yes"}).has_value());
  for (std::size_t i = 0; i < std::size(kWorking); ++i) {
    REQUIRE_FALSE(session.write({kWorking[i][0], i < right ? kWorking[i][1] : "7"}).has_value());
  }
  if (handed_in) session.end("handed in");
  const std::string path = shelf.file(session.level().id + "-" + std::to_string(number) + ".jsonl");
  REQUIRE(write_attempt(session.attempt(), path).has_value());
  std::filesystem::last_write_time(
      path, std::filesystem::file_time_type::clock::now() + std::chrono::seconds(number));
}

}  // namespace

TEST_CASE("each working handed in rightly withdraws one line, from the end") {
  const test::TemporaryFolder shelf;
  const Level level = test::good_level();
  CHECK(withdrawn_lines(shelf.file(""), level, "kim").empty());
  hand_in(shelf, 1, 5);
  CHECK(withdrawn_lines(shelf.file(""), level, "kim") ==
        std::vector<std::string>{"calculation/spirit vinegar"});
  hand_in(shelf, 2, 2);  // two lines right, and the last of them goes
  CHECK(withdrawn_lines(shelf.file(""), level, "kim") ==
        std::vector<std::string>{"calculation/spirit vinegar", "calculation/moles of alkali"});
}

TEST_CASE("another person's attempts and those not handed in withdraw nothing") {
  const test::TemporaryFolder shelf;
  hand_in(shelf, 1, 5, "ola");
  hand_in(shelf, 2, 5, "kim", false);
  CHECK(withdrawn_lines(shelf.file(""), test::good_level(), "kim").empty());
}

TEST_CASE("a slip offers what still stands") {
  const WorkedExample example = worked_example(test::good_level(), 1);
  CHECK(WorkedSlip{example, {}}.standing() == 5);
  const WorkedSlip slip{example, {"calculation/spirit vinegar"}};
  CHECK(slip.standing() == 4);
  CHECK(slip.is_withdrawn("calculation/spirit vinegar"));
  CHECK_FALSE(slip.is_withdrawn("calculation/mean titre"));
  CHECK_FALSE(WorkedSlip{}.offered());
}
