#include "game/marking/reading_drill.h"

#include <doctest/doctest.h>

#include <cmath>

#include "game/marking/drill_marks.h"
#include "game/marking/wording.h"
#include "physics/random.h"
#include "tests/support/drill_level.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

PictureRead picture(int number, double true_cm3, const std::string& text, double written_cm3) {
  PictureRead one;
  one.number = number;
  one.shown = true;
  one.true_cm3 = one.apparent_cm3 = true_cm3;
  one.apparent_edge_cm3 = true_cm3 - 0.31;
  one.text = text;
  one.written_cm3 = written_cm3;
  return one;
}

/// Thirty pictures over the scale, each written as `reader` says (hundredths) of its true reading.
template <class Reader>
std::vector<PictureRead> thirty(Reader reader) {
  std::vector<PictureRead> pictures;
  Random random{12345};
  for (int i = 1; i <= 30; ++i) {
    const double true_cm3 = random.uniform(0.1, 49.9);
    const int hundredths = reader(true_cm3);
    pictures.push_back(picture(i, true_cm3, figure_text(hundredths / 100.0, 2), hundredths / 100.0));
  }
  return pictures;
}

int to_twentieths(double cm3) { return 5 * static_cast<int>(std::lround(cm3 * 20.0)); }

std::vector<Finding> findings(const ReadingDrill& drill) {
  std::vector<Finding> found;
  find_in_reading(drill, drill_level(DrillKind::read_meniscus), found);
  return found;
}

Finding finding(const ReadingDrill& drill, const std::string& id) {
  for (const Finding& one : findings(drill)) {
    if (one.criterion == id) return one;
  }
  FAIL("no finding " << id);
  return {};
}

bool says(const Finding& finding, const std::string& words) {
  return finding.seen.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("who rounds rightly to 0.05 has no bias, no habit, and the spread of rounding alone") {
  const ReadingDrill drill = reading_figures(thirty(to_twentieths), 0.05);
  CHECK(drill.read == 30);
  // An even spread over one step: step / sqrt(12), here 0.0144 cm3.
  CHECK_NEAR(drill.errors.sd, 0.05 / std::sqrt(12.0), 0.004);
  CHECK(finding(drill, "no-bias").met);
  CHECK(finding(drill, "steady").met);
  CHECK(finding(drill, "last-figure").met);
  CHECK(finding(drill, "half-divisions").met);
  for (const int digit : {0, 5}) {
    const DigitCount& count = drill.digits[static_cast<std::size_t>(digit)];
    CHECK(count.written == count.called_for);
  }
}

TEST_CASE("a reader who always reads 0.03 high is told so, with the figure and its error") {
  const auto high = [](double cm3) { return static_cast<int>(std::lround((cm3 + 0.03) * 100.0)); };
  const ReadingDrill drill = reading_figures(thirty(high), 0.01);
  CHECK_NEAR(drill.errors.mean, 0.03, 0.002);
  const Finding bias = finding(drill, "no-bias");
  CHECK(!bias.met);
  CHECK(says(bias, "reads high"));
  CHECK_NEAR(*bias.cost_cm3, drill.errors.mean, 1e-12);
  CHECK(finding(drill, "steady").met);
}

TEST_CASE("a mean within two standard errors of nought is no bias seen") {
  std::vector<PictureRead> pictures;
  // Errors +0.06 and -0.04 by turns: mean 0.010, SD 0.0509, standard error 0.0093 (30 values; n - 1).
  for (int i = 1; i <= 30; ++i) {
    const double written_cm3 = 10.0 + (i % 2 == 0 ? 0.06 : -0.04);
    pictures.push_back(picture(i, 10.0, figure_text(written_cm3, 2), written_cm3));
  }
  const ReadingDrill drill = reading_figures(pictures, 0.01);
  CHECK_NEAR(drill.errors.mean, 0.010, 1e-12);
  CHECK_NEAR(drill.errors.sd, 0.05 * std::sqrt(30.0 / 29.0), 1e-12);
  CHECK(finding(drill, "no-bias").met);
  CHECK(says(finding(drill, "no-bias"), "No bias seen"));
  CHECK(!finding(drill, "steady").met);
}

TEST_CASE("a reader who writes a last 0 for every 5 is told so; one who does it twice is not") {
  int left = 30;
  const auto likes_nought = [&](double cm3) {
    const int right = to_twentieths(cm3);
    return right % 10 == 5 && left-- > 0 ? right - 5 : right;
  };
  const ReadingDrill always = reading_figures(thirty(likes_nought), 0.05);
  REQUIRE(always.liked_digit.has_value());
  CHECK(*always.liked_digit == 0);
  CHECK(always.digits[0].written == 30);
  CHECK(always.digits[5].called_for > 8);
  CHECK(says(finding(always, "last-figure"), "100 % of your readings end in it"));
  left = 2;
  CHECK(!reading_figures(thirty(likes_nought), 0.05).liked_digit);
}

TEST_CASE("of ten last figures a liking must be ten times less likely by chance") {
  // Seven readings moved to a last 0 from elsewhere and none away from it: 2 / 2^7 = 0.016, times ten 0.16.
  int moved = 0;
  const auto sometimes = [&](double cm3) {
    const int right = static_cast<int>(std::lround(cm3 * 100.0));
    return right % 10 != 0 && moved++ < 7 ? right - right % 10 : right;
  };
  const ReadingDrill seven = reading_figures(thirty(sometimes), 0.01);
  CHECK(!seven.liked_digit);
  CHECK_NEAR(seven.liked_chance, 20.0 / 128.0, 1e-12);
  moved = -8;
  const ReadingDrill fifteen = reading_figures(thirty(sometimes), 0.01);
  REQUIRE(fifteen.liked_digit.has_value());
  CHECK(*fifteen.liked_digit == 0);
}

TEST_CASE("slips are counted, named, and left out of bias and spread") {
  std::vector<PictureRead> pictures = thirty(to_twentieths);
  const ReadingDrill without = reading_figures(std::vector(pictures.begin() + 4, pictures.end()), 0.05);
  pictures[0] = picture(1, 24.60, "25.40", 25.40);
  pictures[1] = picture(2, 24.60, "24.30", 24.30);
  pictures[2] = picture(3, 24.60, "23.60", 23.60);
  pictures[3] = picture(4, 24.60, "34.60", 34.60);
  const ReadingDrill drill = reading_figures(pictures, 0.05);
  CHECK(drill.slips == 4);
  CHECK(drill.errors.count == 26);
  CHECK_NEAR(drill.errors.sd, without.errors.sd, 1e-12);
  CHECK(slip_looks_like(pictures[0]) == "that is the scale read upwards");
  CHECK(slip_looks_like(pictures[1]) == "that is the upper edge of the meniscus");
  CHECK(slip_looks_like(pictures[2]) == "that is one whole cm³ off");
  CHECK(slip_looks_like(pictures[3]) == "that is ten cm³ off");
  CHECK(slip_looks_like(picture(5, 24.60, "25.07", 25.07)).empty());
  CHECK(!finding(drill, "no-slips").met);
  CHECK(drill.mean_size_cm3 > 0.3);
}

TEST_CASE("readings with an eye off level are counted, with what they cost") {
  std::vector<PictureRead> pictures = thirty(to_twentieths);
  pictures[3].apparent_cm3 = pictures[3].true_cm3 - 0.08;
  pictures[7].apparent_cm3 = pictures[7].true_cm3 + 0.04;
  pictures[9].apparent_cm3 = pictures[9].true_cm3 + 0.01;  // level enough
  pictures[3].tick = 480;
  const ReadingDrill drill = reading_figures(pictures, 0.05);
  CHECK(drill.off_level == 2);
  CHECK_NEAR(drill.off_level_cost_cm3, 0.06, 1e-12);
  const Finding level = finding(drill, "eye-level");
  CHECK(!level.met);
  CHECK(level.tick == 480);
  CHECK(level.points == 1.0);  // of two: no more than a tenth of the readings
  CHECK(says(level, "2 of 30 readings"));
}

TEST_CASE("too few readings give no verdict, and no points for one") {
  std::vector<PictureRead> pictures = thirty(to_twentieths);
  for (std::size_t i = 8; i < pictures.size(); ++i) {
    pictures[i].text.clear();
    pictures[i].written_cm3.reset();
  }
  const ReadingDrill drill = reading_figures(pictures, 0.05);
  CHECK(drill.read == 8);
  double points = 0.0;
  for (const Finding& one : findings(drill)) {
    if (!one.judged) points += one.points;
  }
  CHECK(points == 0.0);
  CHECK(!finding(drill, "readings-written").met);
  CHECK(finding(drill, "eye-not-judged").of >= 10.0);
}

TEST_CASE("who reads the upper edge is told so, whether it is a bias or a slip") {
  const auto edge_read = [](double up_cm3) {
    auto pictures = thirty([&](double cm3) { return static_cast<int>(std::lround((cm3 - up_cm3) * 100.0)); });
    for (PictureRead& one : pictures) one.apparent_edge_cm3 = one.true_cm3 - up_cm3;
    return reading_figures(pictures, 0.05);
  };
  const Finding bias = finding(edge_read(0.20), "no-bias");
  CHECK(says(bias, "upper edge of the meniscus"));
  CHECK(bias.advice.starts_with("Read the lowest point"));
  const Finding slips = finding(edge_read(0.31), "no-slips");
  CHECK(says(slips, "upper edge of the meniscus"));
  CHECK(slips.advice.starts_with("Read the lowest point"));
  CHECK_FALSE(says(
      finding(reading_figures(thirty([](double cm3) { return to_twentieths(cm3 - 0.08); }), 0.05), "no-bias"),
      "upper edge of the meniscus"));
}

TEST_CASE("nobody who read thirty pictures is told to read ten") {
  const auto whole_off = reading_figures(thirty([](double cm3) { return to_twentieths(cm3) + 100; }), 0.05);
  std::vector<Finding> found = findings(whole_off);
  for (const Finding& one : found) {
    CAPTURE(one.criterion);
    CHECK(one.advice.find("Read at least") == std::string::npos);
  }
  auto one_decimal = thirty([](double cm3) { return 10 * static_cast<int>(std::lround(cm3 * 10.0)); });
  for (PictureRead& one : one_decimal) one.text.pop_back();
  CHECK(says(finding(reading_figures(one_decimal, 0.05), "last-figure"), "0 readings with a second decimal"));
}

TEST_CASE("a trained reader's spread grows by the step that is written to") {
  // Source: 0.022 cm3, A. A. Gordus, J. Chem. Educ. 1987, "Statistical evaluation of class data for two buret
  // readings": each reader estimated to 1/100 cm3. A step of 0.05 adds 0.05 / sqrt(12) in squares: 0.0263.
  CHECK_NEAR(trained_sd_cm3(0.01), 0.022, 1e-12);
  CHECK_NEAR(trained_sd_cm3(0.05), 0.0263, 0.00005);
}

TEST_CASE("a figure belongs to its picture as it stood when it was written there, or was turned over") {
  const Level level = drill_level(DrillKind::read_meniscus);
  Session session(level, 4, "");
  ReadingWatch watch;
  const auto log_of = [&] { return session.attempt().changes.back(); };
  const auto eye_to = [&](double mm) {
    HandsChange change;
    change.eye_mm = mm;
    REQUIRE(!session.set_hands(change));
  };
  const double mm_per_cm3 = level.burette.scale_length_mm / level.burette.nominal_cm3;
  const double first_cm3 = session.spec().drill.pictures[0].reading_cm3;
  eye_to(std::round(-first_cm3 * mm_per_cm3));
  REQUIRE(!session.write({"reading/1", "9.99"}));
  watch.after_change(session, log_of());
  eye_to(-first_cm3 * mm_per_cm3 + 60.0);  // moved after it was written: no matter
  watch.before_change(session, {session.state().tick, Deed::next_picture});
  REQUIRE(!session.act(Deed::next_picture));
  watch.after_change(session, log_of());
  REQUIRE(!session.write({"reading/1", figure_text(first_cm3, 2)}));  // put right on paper
  watch.after_change(session, log_of());
  REQUIRE(!session.write({"reading/7", "1.00"}));  // nothing to read there yet
  watch.after_change(session, log_of());
  const ReadingDrill drill = watch.figures(session);
  REQUIRE(drill.pictures.size() == 30);
  CHECK(drill.read == 1);
  CHECK_NEAR(drill.pictures[0].true_cm3, first_cm3, 1e-9);
  CHECK(!drill.pictures[0].off_level());
  CHECK(std::fabs(drill.pictures[0].error_cm3()) < 0.0051);
  CHECK(drill.pictures[1].shown);
  CHECK(!drill.pictures[6].shown);
}

TEST_CASE("readings too low count for as much as readings too high") {
  const auto low = reading_figures(thirty([](double cm3) { return to_twentieths(cm3) - 5; }), 0.05);
  const auto high = reading_figures(thirty([](double cm3) { return to_twentieths(cm3) + 5; }), 0.05);
  CHECK(low.errors.mean < -0.03);
  CHECK_NEAR(low.mean_size_cm3, 0.05, 0.01);
  CHECK_NEAR(high.mean_size_cm3, 0.05, 0.01);
  CHECK(finding(low, "reading-error").points == finding(high, "reading-error").points);
  CHECK(finding(low, "reading-error").points < finding(low, "reading-error").of);
}

TEST_CASE("slips and figures below nought say nothing of last figures") {
  std::vector<PictureRead> pictures = thirty(to_twentieths);
  pictures[0] = picture(1, 24.60, "25.40", 25.40);
  pictures[1] = picture(2, 0.10, "-0.05", -0.05);
  const ReadingDrill drill = reading_figures(pictures, 0.05);
  CHECK(drill.slips == 1);
  int written = 0, called_for = 0;
  for (const DigitCount& count : drill.digits) {
    written += count.written;
    called_for += count.called_for;
  }
  CHECK(written == 28);
  CHECK(called_for == 28);
}

TEST_CASE("an eye off level more often than now and then earns nothing for it") {
  std::vector<PictureRead> pictures = thirty(to_twentieths);
  for (std::size_t i = 0; i < 4; ++i) pictures[i].apparent_cm3 = pictures[i].true_cm3 - 0.08;
  CHECK(finding(reading_figures(pictures, 0.05), "eye-level").points == 0.0);
}

TEST_CASE("where readings go to 0.01, one with a single decimal is not written as asked") {
  std::vector<PictureRead> pictures =
      thirty([](double cm3) { return static_cast<int>(std::lround(cm3 * 100.0)); });
  CHECK(finding(reading_figures(pictures, 0.01), "half-divisions").met);
  pictures[4].text = "12.3";
  CHECK(!finding(reading_figures(pictures, 0.01), "half-divisions").met);
}

TEST_CASE("written again with the eye elsewhere, a figure is the later eye's") {
  const Level level = drill_level(DrillKind::read_meniscus);
  Session session(level, 4, "");
  ReadingWatch watch;
  const double level_mm = -session.spec().drill.pictures[0].reading_cm3 * level.burette.scale_length_mm /
                          level.burette.nominal_cm3;
  for (const double above_mm : {0.0, 100.0}) {
    HandsChange change;
    change.eye_mm = level_mm + above_mm;
    REQUIRE(!session.set_hands(change));
    REQUIRE(!session.write({"reading/1", "9.99"}));
    watch.after_change(session, session.attempt().changes.back());
  }
  HandsChange back;
  back.eye_mm = level_mm;
  REQUIRE(!session.set_hands(back));
  REQUIRE(!session.write({"reading/2", "1.00"}));  // into another picture's cell: no look at this one
  watch.after_change(session, session.attempt().changes.back());
  CHECK(watch.figures(session).pictures[0].parallax_cm3() < -0.05);
}

}  // namespace halfdrop
