// A novice who knows nothing and does each step as the guide says it, with the demonstrator's moves.

#include <doctest/doctest.h>

#include <cmath>
#include <map>

#include "game/demonstrator/making_up.h"
#include "game/demonstrator/moves.h"
#include "game/demonstrator/pencil.h"
#include "game/demonstrator/pipetting.h"
#include "game/marking/calculation.h"
#include "game/marking/marks.h"
#include "game/session/guide.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"
#include "tests/support/rounds.h"

namespace halfdrop {
namespace {

constexpr double kMixes_s = 6.0, kStream_drops_per_s = 8.0;

class Novice {
 public:
  Novice(const Level& level, std::uint64_t seed) : session_(level, seed, "novice", Way::guided) {}

  /// Nothing when all went well; else the step at which it stuck.
  std::string play() {
    for (int steps = 0; steps < 3000 && !session_.ended(); ++steps) {
      const std::string step(next());
      const Tick before = session_.state().tick;
      const std::size_t done = session_.attempt().changes.size();
      if (!obey(step)) return "no such step: " + step;
      if (bench_.gave_up()) return step + ": " + *bench_.gave_up();
      if (session_.state().tick == before && session_.attempt().changes.size() == done) bench_.wait(0.25);
    }
    return session_.ended() ? "" : "three thousand steps, and still " + std::string(next());
  }
  [[nodiscard]] const Session& session() const { return session_; }

 private:
  using Do = void (Novice::*)();

  std::string_view next() {
    const View seen = view(session_);
    guide_.see(session_, seen);
    facts_ = guide_facts(session_, seen);
    return guide_.next();
  }
  /// Goes on with what the hands do until the guide says something else.
  void while_told(std::string_view step) {
    bench_.watch_until(
        [&](const Senses& seen) {
          if (facts_.initial_cm3) moves_.follow_meniscus(seen);
          return next() != step;
        },
        600.0);
  }
  void fill() {
    bench_.hold(&HandsChange::eye_mm, bench_.hands().clamp_mm);
    bench_.hold(&HandsChange::pour, 0.2);
    while_told("fill");
    bench_.hold(&HandsChange::pour, 0.0);
  }
  void pour_a_little() {
    bench_.hold(&HandsChange::eye_mm, bench_.hands().clamp_mm - 500.0);
    bench_.hold(&HandsChange::pour, 0.5);
    while_told("rinse-pour");
    bench_.hold(&HandsChange::pour, 0.0);
  }
  void swing_out() {
    bench_.watch_until([](const Senses& seen) { return seen.falling == 0; }, 2.0);
    bench_.act(Deed::swing_over_edge);
  }
  /// The eye goes along with the scale.
  void clamp_to(double mm) {
    const double over_zero_mm = eye_above_zero_mm(bench_.hands());
    bench_.hold(&HandsChange::clamp_mm, mm);
    bench_.hold(&HandsChange::eye_mm, over_zero_mm + mm);
  }
  void lower() { clamp_to(-280.0); }
  void raise() { clamp_to(0.0); }
  void turn_about() {
    bench_.hold(&HandsChange::tilt_degrees, 85.0);
    bench_.wait(6.0);
    bench_.hold(&HandsChange::tilt_degrees, 0.0);
  }
  void run_out() {
    bench_.hold(&HandsChange::tap, 1.0);
    while_told(next());
  }
  void stream() {
    const std::string step(next());
    moves_.open_tap_to(kStream_drops_per_s);
    while_told(step);
    moves_.shut_tap();
    mix();
  }
  void mix() {
    bench_.watch_until([](const Senses& seen) { return seen.falling == 0; }, 1.0);
    bench_.wait(0.3);
    bench_.watch_until([](const Senses& seen) { return seen.streaks < 0.5; }, kMixes_s);
  }
  void drop() {
    moves_.one_drop();
    mix();
  }
  void half_drop() {
    moves_.half_drop();
    mix();
  }
  void wash() {
    moves_.wash_down(1.0);
    mix();
  }
  void draw_up() { draw_past_line(bench_); }
  void eye_at_line() { look_at_line(bench_); }
  void let_down() { let_down_to_line(bench_); }
  void let_run() { bench_.hold(&HandsChange::valve, 1.0); }
  void weigh(const char* cell) { bench_.write(cell, weight_text(bench_.look().preparation.shown_g)); }
  void weigh_before() { weigh(kBottleBefore); }
  void weigh_after() { weigh(kBottleAfter); }
  void tip_out() { tip_out_enough(bench_, std::stod(session_.cell(kBottleBefore))); }
  void eye_at_mark() { look_at_mark(bench_); }
  void let_water_in() {
    bench_.hold(&HandsChange::fill, 0.5);
    while_told("standard-fill");
    bench_.hold(&HandsChange::fill, 0.0);
  }
  void fill_to_line() { fill_to_mark(bench_); }
  void read(const char* row) { bench_.write(facts_.run + row, hundredths_text(moves_.read_hundredths())); }
  void read_initial() { read("/initial"); }
  void read_first() { read("/first endpoint"); }
  void read_final() { read("/final"); }
  void less_initial(const char* row, double reading_cm3) {
    bench_.write(facts_.run + row,
                 hundredths_text(static_cast<int>(std::lround((reading_cm3 - *facts_.initial_cm3) * 100))));
  }
  void first_titre() { less_initial("/first titre", *facts_.first_cm3); }
  void titre() { less_initial("/titre", *facts_.final_cm3); }
  void tick() {
    for (const std::string& run : facts_.counting) bench_.write(run + "/counts", "yes");
  }
  void work() {
    std::map<std::string, double> written;
    for (const char* cell : {kBottleBefore, kBottleAfter}) {
      if (session_.level().standard) written[cell] = std::stod(session_.cell(cell));
    }
    for (const CalculationStep& step : session_.level().calculation) {
      const std::string text = session_.cell(step.cell);
      if (!text.empty()) {
        written[step.cell] = std::stod(text);
      } else if (is_mean(step.cell)) {
        const char* const row = step.cell == kMeanTitre ? "/titre" : "/first titre";
        const auto titre_of = [&](std::size_t i) {
          return std::stod(session_.cell(facts_.counting.at(i) + row));
        };
        return bench_.write(
            step.cell,
            hundredths_text(static_cast<int>(std::floor((titre_of(0) + titre_of(1)) * 50.0 + 0.5))));
      } else {
        const bool last = &step == &session_.level().calculation.back();
        return bench_.write(step.cell, figures_text(evaluate(session_.level(), step, written).value_or(0.0),
                                                    step.least_figures + (last ? 0 : 1)));
      }
    }
  }
  void eye() { moves_.level_eye(); }
  void shut() { moves_.shut_tap(); }
  void aside() { moves_.flask_aside(); }
  void under() { moves_.flask_under(); }
  void swirl() { moves_.swirl(); }
  void wait() { bench_.wait(0.5); }
  void hand_in() { session_.end("handed in"); }

  bool obey(const std::string& step) {
    for (const GuideStep& row : guide_steps()) {
      if (row.id != step || !row.deed || step == "jet" || step == "half-drops" || step == "swing-out")
        continue;
      bench_.act(*row.deed);
      return true;
    }
    const std::map<std::string, Do> moves = {{"tap-shut", &Novice::shut},
                                             {"swing-out", &Novice::swing_out},
                                             {"lower", &Novice::lower},
                                             {"raise", &Novice::raise},
                                             {"jet-shut", &Novice::shut},
                                             {"slow-down", &Novice::shut},
                                             {"shut", &Novice::shut},
                                             {"flask-aside", &Novice::aside},
                                             {"flask-out", &Novice::aside},
                                             {"flask-under", &Novice::under},
                                             {"standard-before", &Novice::weigh_before},
                                             {"standard-tip", &Novice::tip_out},
                                             {"standard-after", &Novice::weigh_after},
                                             {"standard-fill", &Novice::let_water_in},
                                             {"standard-eye", &Novice::eye_at_mark},
                                             {"standard-line", &Novice::fill_to_line},
                                             {"pipette-aside", &Novice::aside},
                                             {"pipette-draw", &Novice::draw_up},
                                             {"pipette-eye", &Novice::eye_at_line},
                                             {"pipette-line", &Novice::let_down},
                                             {"pipette-run", &Novice::let_run},
                                             {"pipette-drain", &Novice::wait},
                                             {"rinse-pour", &Novice::pour_a_little},
                                             {"rinse-turn", &Novice::turn_about},
                                             {"rinse-out", &Novice::run_out},
                                             {"fill", &Novice::fill},
                                             {"jet", &Novice::run_out},
                                             {"on-scale", &Novice::run_out},
                                             {"eye-initial", &Novice::eye},
                                             {"eye-final", &Novice::eye},
                                             {"read-initial", &Novice::read_initial},
                                             {"read-final", &Novice::read_final},
                                             {"read-first", &Novice::read_first},
                                             {"first-titre", &Novice::first_titre},
                                             {"titre", &Novice::titre},
                                             {"swirl", &Novice::swirl},
                                             {"mix", &Novice::mix},
                                             {"trial-run", &Novice::stream},
                                             {"run-quickly", &Novice::stream},
                                             {"drops", &Novice::drop},
                                             {"half-drops", &Novice::half_drop},
                                             {"wash-down", &Novice::wash},
                                             {"wash-in", &Novice::wash},
                                             {"wait", &Novice::wait},
                                             {"tick", &Novice::tick},
                                             {"working", &Novice::work},
                                             {"hand-in", &Novice::hand_in}};
    const auto found = moves.find(step);
    if (found == moves.end()) return false;
    (this->*found->second)();
    return true;
  }

  Session session_;
  AtBench bench_{session_};
  Habits habits_;
  Moves moves_{bench_, habits_};
  Guide guide_;
  GuideFacts facts_;
};

}  // namespace

namespace {

Level coarse(const std::string& name) {
  auto level = read_level(std::string(HALFDROP_SOURCE_FOLDER) + "/levels/" + name + ".json");
  REQUIRE(level.has_value());
  level->flask.fineness = 0.25;  // quicker than a player's
  return *level;
}

/// A colour that goes is judged by its last trace, which air's carbon dioxide moves meanwhile: the hand may
/// end a band lower, a few thousandths of a cubic centimetre beyond half a drop or two.
double may_lose(const Level& level) { return level.endpoint_gains_colour ? 0.0 : 2.0; }

void check_full_marks(const Level& level, std::uint64_t seed) {
  CAPTURE(level.id);
  CAPTURE(seed);
  Novice novice(level, seed);
  CHECK(novice.play() == "");
  const MarkedAttempt marked = mark(novice.session().attempt());
  CHECK(marked.way == Way::guided);
  CHECK(marked.outcome.reproduced);
  const double lost = test::points_lost(marked);
  CHECK(test::unmet(marked) == (lost > 0.0 ? "titrant-volume" : ""));
  CHECK(marked.marks.safe);
  CHECK(lost <= may_lose(level) + 1e-12);
}

}  // namespace

TEST_CASE("so does who leaves the pipette to practised hands where the level does") {
  const auto level = with_values(coarse("01-spirit-vinegar"), R"({"pipette":{"by_hand":false}})");
  REQUIRE(level.has_value());
  check_full_marks(*level, 3);
}

TEST_CASE("who does each step as the guide says it gets every mark, or all but a band of the hand") {
  const auto seeds = static_cast<std::uint64_t>(test::rounds(1, 10));
  for (const char* name : {"01-spirit-vinegar", "03-standard-acid", "04-washing-soda", "09-baked-baking-soda",
                           "10-aspirin-tablets"}) {
    const Level level = coarse(name);
    for (std::uint64_t seed = 3; seed < 3 + seeds; ++seed) check_full_marks(level, seed);
  }
}

}  // namespace halfdrop
