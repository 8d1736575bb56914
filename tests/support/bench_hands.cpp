#include "tests/support/bench_hands.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <stdexcept>

#include "game/session/view.h"
#include "physics/burette/column.h"
#include "physics/burette/jet.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"

namespace halfdrop::test {

namespace {

constexpr double kAside_cm = 26.0;

void insist(const std::optional<std::string>& refused, const std::string& what) {
  if (refused) throw std::runtime_error(what + ": " + *refused);
}

std::string printed(const char* format, double value) {
  std::array<char, 60> text{};
  std::snprintf(text.data(), text.size(), format, value);
  return text.data();
}

HandsChange tap(double position) {
  HandsChange change;
  change.tap = position;
  return change;
}

HandsChange flask_at(double x_cm) {
  HandsChange change;
  change.flask_x_cm = x_cm;
  return change;
}

}  // namespace

Level spirit_vinegar() {
  auto level = read_level(std::string(HALFDROP_SOURCE_FOLDER) + "/levels/01-spirit-vinegar.json");
  if (!level) throw std::runtime_error(to_string(level.error().front()));
  level->flask.fineness = 0.25;
  level->pipette.by_hand = false;                         // practised hands
  level->burette.wet_cm3 = level->pipette.wet_cm3 = 0.0;  // these hands rinse nothing
  level->filling_below_eye = false;                       // ... and lower nothing
  return *level;
}

Attempt with_text(Attempt attempt, const std::string& cell, const std::string& text) {
  bool found = false;
  for (Change& change : attempt.changes) {
    auto* writing = std::get_if<Writing>(&change.what);
    if (writing == nullptr || writing->cell != cell) continue;
    writing->text = text;
    found = true;
  }
  if (!found) throw std::runtime_error("nothing is written in " + cell);
  return attempt;
}

Attempt rewritten(Attempt attempt, const std::string& cell, const std::string& text, double later_s) {
  Tick when = attempt.changes.back().tick;
  for (const Change& change : attempt.changes) {
    const auto* writing = std::get_if<Writing>(&change.what);
    if (writing == nullptr || writing->cell != cell) continue;
    when = std::min(when, change.tick + static_cast<Tick>(later_s * kTicksPerSecond));
  }
  const auto place = std::find_if(attempt.changes.begin(), attempt.changes.end(), [&](const Change& change) {
    return change.tick > when || std::holds_alternative<Ending>(change.what);
  });
  attempt.changes.insert(place, Change{when, Writing{cell, text}});
  return attempt;
}

BenchHands::BenchHands(std::uint64_t seed) : BenchHands(spirit_vinegar(), seed) {}
BenchHands::BenchHands(const Level& level, std::uint64_t seed) : session_(level, seed, "Wren") {}

void BenchHands::hold(const HandsChange& change) { insist(session_.set_hands(change), "hands"); }
void BenchHands::act(Deed deed) { insist(session_.act(deed), std::string(deed_name(deed))); }
void BenchHands::write(const std::string& cell, const std::string& text) {
  insist(session_.write({cell, text}), cell);
}

void BenchHands::wait(double seconds) {
  for (int i = 0; i < static_cast<int>(seconds * kTicksPerSecond); ++i) session_.tick();
}

void BenchHands::protect() {
  act(Deed::put_on_coat);
  act(Deed::put_on_goggles);
}

void BenchHands::fill_burette(double reading_cm3, double tap_position, bool lift_funnel_out) {
  hold(tap(tap_position));
  if (!bench().funnel_in) act(Deed::put_in_funnel);
  HandsChange pour;
  pour.pour = 1.0;
  hold(pour);
  const double wanted_cm3 = column_volume_cm3(spec().burette, reading_cm3);
  while (bench().ledger.balance(Account::column).volume_cm3() < wanted_cm3) session_.tick();
  pour.pour = 0.0;
  hold(pour);
  hold(tap(0.0));
  if (lift_funnel_out) act(Deed::lift_out_funnel);
  wait(1.0);
}

void BenchHands::fill_jet() {
  hold(flask_at(kAside_cm));
  act(Deed::put_beaker_under);
  hold(tap(1.0));
  while (bench().ledger.balance(Account::jet).volume_cm3() < spec().burette.jet_cm3 - 1e-6) session_.tick();
  wait(0.5);
  hold(tap(0.0));
  wait(0.5);
  if (!bench().ledger.balance(Account::pendant_drop).empty()) act(Deed::touch_off_drop);
  act(Deed::take_beaker_away);
}

void BenchHands::prepare_flask(int indicator_drops, int aliquots) {
  hold(flask_at(kAside_cm));
  for (int i = 0; i < aliquots; ++i) {
    act(Deed::fill_pipette);
    wait(1.0);
    act(Deed::deliver_aliquot);
  }
  for (int i = 0; i < indicator_drops; ++i) act(Deed::add_indicator);
  wait(0.5);
}

double BenchHands::past_equivalence_cm3() const {
  return excess_titrant_mol(spec(), flask_liquid(bench().ledger)) / spec().breakdown_mol_dm3() * 1000.0;
}

double BenchHands::tap_for(double drops_per_s) const {
  const double wanted_cm3_s = drops_per_s * spec().settled.full_drop_cm3;
  double low = 0.0;
  double high = 1.0;
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (low + high);
    (tap_flow_cm3_s(spec(), bench(), middle) < wanted_cm3_s ? low : high) = middle;
  }
  return high;
}

void BenchHands::titrate(const RunPlan& plan) {
  HandsChange swirl;
  swirl.swirl = plan.swirl;
  hold(swirl);
  hold(tap(1.0));
  while (past_equivalence_cm3() < plan.past_cm3 - plan.drop_by_drop_cm3) session_.tick();
  hold(tap(tap_for(plan.last_tap_drops_per_s)));
  while (past_equivalence_cm3() < plan.past_cm3) session_.tick();
  hold(tap(0.0));
  wait(0.5);
  if (plan.touch_off && !bench().ledger.balance(Account::pendant_drop).empty()) act(Deed::touch_off_drop);
  if (plan.left_hanging_cm3 > 0.0) {
    hold(tap(tap_for(0.5)));
    while (bench().ledger.balance(Account::pendant_drop).volume_cm3() < plan.left_hanging_cm3)
      session_.tick();
    hold(tap(0.0));
  }
  HandsChange wash;
  wash.wash = plan.wash_down ? 1.0 : 0.0;
  hold(wash);
  wait(3.0);
  wash.wash = 0.0;
  wash.swirl = 0.0;
  hold(wash);
  wait(plan.waits_s);
}

std::string BenchHands::read(const std::string& cell, double eye_above_mm) {
  const double mark_cm3 =
      scale_reading_cm3(spec().burette, bench().ledger.balance(Account::column).volume_cm3());
  HandsChange eye;
  eye.eye_mm = eye_above_mm - sight_geometry(spec()).mm_per_cm3 * mark_cm3;
  hold(eye);
  wait(0.2);
  const double seen_cm3 = reading_seen(spec(), bench()).bottom_cm3;
  std::string text = printed("%.2f", std::round(seen_cm3 / 0.05) * 0.05);
  write(cell, text);
  return text;
}

void BenchHands::run(const std::string& name, const RunPlan& plan) {
  if (plan.tile && !bench().tile_laid) act(Deed::lay_tile);
  if (!plan.tile && bench().tile_laid) act(Deed::take_tile_away);
  fill_burette(0.5, 0.0, plan.funnel_out);
  if (plan.fill_jet) fill_jet();
  prepare_flask(plan.indicator_drops, plan.aliquots);
  const std::string initial = read(name + "/initial", plan.eye_above_mm);
  hold(flask_at(0.0));
  titrate(plan);
  const std::string final = read(name + "/final", plan.eye_above_mm);
  write(name + "/titre", printed("%.2f", std::stod(final) - std::stod(initial)));
  hold(flask_at(kAside_cm));
  if (bench().funnel_in) act(Deed::lift_out_funnel);
  if (plan.rinse_after) act(Deed::rinse_flask);
  wait(0.5);
}

void BenchHands::tick_and_calculate(const std::vector<std::string>& runs) {
  double mean_cm3 = 0.0;
  for (const std::string& run : runs) {
    write(run + "/counts", "yes");
    mean_cm3 += std::stod(session_.cell(run + "/titre")) / static_cast<double>(runs.size());
  }
  const double moles = 0.1 * mean_cm3 / 1000.0;
  write("calculation/mean titre", printed("%.2f", mean_cm3));
  write("calculation/moles of alkali", printed("%.3e", moles));
  write("calculation/moles of acid", printed("%.3e", moles));
  write("calculation/diluted vinegar", printed("%.4f", moles * 40.0));
  write("calculation/spirit vinegar", printed("%.3f", moles * 400.0));
}

Attempt BenchHands::hand_in() {
  session_.end("handed in");
  return session_.attempt();
}

void BenchHands::whole_attempt(const RunPlan& plan) {
  protect();
  RunPlan trial;
  trial.past_cm3 = 0.3;
  trial.drop_by_drop_cm3 = 0.0;
  run("trial", trial);
  run("1", plan);
  run("2", plan);
  tick_and_calculate({"1", "2"});
}

HandsChange held(std::optional<double> HandsChange::*hand, double value) {
  HandsChange change;
  change.*hand = value;
  return change;
}

double in(const BenchHands& hands, Account account) {
  return hands.bench().ledger.balance(account).volume_cm3();
}

}  // namespace halfdrop::test
