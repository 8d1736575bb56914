#include "game/session/guide.h"

#include <doctest/doctest.h>

#include <set>

#include "physics/bench/state_hash.h"
#include "tests/support/bench_hands.h"
#include "tests/support/good_level.h"

namespace halfdrop::test {
namespace {

/// A player who looks at the guide four times a second.
struct Guided {
  BenchHands hands;
  Guide guide;

  explicit Guided(const Level& level = spirit_vinegar()) : hands(level) { look(); }
  std::string look() {
    guide.see(hands.session(), view(hands.session()));
    return shown();
  }
  [[nodiscard]] std::string shown() const {
    return guide.shown() ? std::string(guide.shown()->id) : std::string();
  }
  std::string act(Deed deed) {
    hands.act(deed);
    return look();
  }
  std::string write(const std::string& cell, const std::string& text) {
    hands.write(cell, text);
    return look();
  }
  std::string hold(std::optional<double> HandsChange::*hand, double value) {
    hands.hold(held(hand, value));
    return look();
  }
  std::string wait(double seconds_) {
    for (double s = 0.0; s < seconds_; s += 0.25) {
      hands.wait(0.25);
      look();
    }
    return shown();
  }
  /// Everything up to the first reading, in order.
  void make_ready() {
    hands.protect();
    hands.fill_burette(-0.5);
    hands.fill_jet();
    const double off_mm = view(hands.session()).eye_above_level_mm;
    hands.hold(held(&HandsChange::eye_mm, hands.session().hands().eye_mm - off_mm));
    look();
  }
};

/// 0.05 cm3 a drop in the middle of a stream; nothing of it matters here.
std::string step_for(const GuideFacts& facts) {
  const GuideStep* const step = next_step(facts);
  return step ? std::string(step->id) + ": " + step->words(facts) + " " + step->reason(facts) : std::string();
}

}  // namespace

TEST_CASE("the guide begins with the coat and goes through the order of practice to the first reading") {
  Guided player;
  std::vector<std::string> steps = {player.shown()};
  const auto next = [&](const std::string& step) { steps.push_back(step); };
  next(player.act(Deed::put_on_coat));
  next(player.act(Deed::put_on_goggles));
  next(player.hold(&HandsChange::tap, 0.0));
  next(player.act(Deed::put_in_funnel));
  player.hands.fill_burette(-0.5, 0.0, false);
  next(player.look());
  next(player.act(Deed::lift_out_funnel));
  next(player.act(Deed::put_beaker_under));
  player.hold(&HandsChange::tap, 1.0);
  while (player.shown() == "jet") player.wait(0.25);
  while (player.shown() == "on-scale") player.wait(0.25);
  next(player.shown());
  next(player.hold(&HandsChange::tap, 0.0));
  player.wait(1.0);
  if (player.shown() == "drop-off") player.act(Deed::touch_off_drop);
  next(player.act(Deed::take_beaker_away));
  const double off_mm = view(player.hands.session()).eye_above_level_mm;
  next(player.hold(&HandsChange::eye_mm, player.hands.session().hands().eye_mm - off_mm));
  next(player.write("trial/initial", "0.45"));
  const std::vector<std::string> order = {"coat",        "goggles",      "tap-shut", "funnel-in", "fill",
                                          "funnel-out",  "beaker-under", "jet",      "jet-shut",  "drop-off",
                                          "eye-initial", "read-initial", "tile"};
  CHECK(steps == order);
}

TEST_CASE(
    "wet glass is rinsed first: burette twice with titrant, turned about and let out; pipette with sample") {
  Level level = spirit_vinegar();
  level.burette.wet_cm3 = 0.3;
  level.pipette.wet_cm3 = 0.15;
  Guided player(level);
  player.hands.protect();
  player.hold(&HandsChange::tap, 0.0);
  for (int i = 0; i < 2; ++i) {
    if (i == 0) CHECK(player.shown() == "rinse-beaker");
    if (i == 0) player.act(Deed::put_beaker_under);
    CHECK(player.guide.next() == "rinse-funnel-in");
    player.act(Deed::put_in_funnel);
    CHECK(player.guide.next() == "rinse-pour");
    player.hands.fill_burette(45.0, 0.0, false);
    player.look();
    CHECK(player.guide.next() == "rinse-funnel-out");
    player.act(Deed::lift_out_funnel);
    CHECK(player.guide.next() == "rinse-turn");
    player.hold(&HandsChange::tilt_degrees, 80.0);
    player.wait(4.0);
    player.hold(&HandsChange::tilt_degrees, 0.0);
    CHECK(player.guide.next() == "rinse-out");
    player.hold(&HandsChange::tap, 1.0);
    for (int s = 0; s < 300 && player.guide.next() == "rinse-out"; ++s) player.wait(1.0);
    CHECK(player.guide.next() == "tap-shut");
    player.hold(&HandsChange::tap, 0.0);
  }
  CHECK(player.guide.next() == "rinse-pipette");
  player.act(Deed::rinse_pipette_with_sample);
  CHECK(player.guide.next() == "funnel-in");
}

TEST_CASE("every step has a name of its own, short words and a reason of one sentence or two") {
  std::set<std::string_view> ids;
  Level level = good_level();
  GuideFacts facts;
  facts.level = &level;
  facts.initial_cm3 = 0.45;
  facts.expected_cm3 = 21.5;
  facts.counting = {"1", "2"};
  for (const CalculationStep& line : level.calculation) {
    facts.next_line = line.prompt;
    for (const GuideStep& step : guide_steps()) {
      CAPTURE(step.id);
      ids.insert(step.id);
      CHECK(step.words(facts).ends_with("."));
      CHECK(step.reason(facts).ends_with("."));
      CHECK(step.words(facts).size() <= 100);
      CHECK(step.reason(facts).size() <= 120);
    }
  }
  CHECK(ids.size() == guide_steps().size());
}

TEST_CASE("what only the bench knows changes nothing that the guide says") {
  Guided player;
  player.make_ready();
  Session& session = player.hands.session();
  const View seen = view(session);
  View other = seen;  // all that an eye at its height does not tell
  other.meniscus_cm3 += 3.0;
  other.apparent_edge_cm3 += 1.0;
  other.flask_cm3 += 0.0;
  other.beaker_cm3 += 5.0;
  other.bottle_cm3 -= 100.0;
  other.funnel_cm3 += 0.2;
  CHECK(step_for(guide_facts(session, seen)) == step_for(guide_facts(session, other)));
  other.apparent_cm3 += 20.0;  // what it does tell
  CHECK(step_for(guide_facts(session, seen)) != step_for(guide_facts(session, other)));
}

TEST_CASE("two unknowns of one level are guided alike until their colours differ") {
  Guided one, two;
  Result<Level> weaker = with_values(
      spirit_vinegar(), R"({"sample":{"unknown_mol_dm3":[0.05,0.05]},"pipette":{"by_hand":false}})");
  REQUIRE(weaker.has_value());
  two.hands = BenchHands(*weaker);
  for (Guided* player : {&one, &two}) {
    player->make_ready();
    player->write("trial/initial", "0.45");
    player->act(Deed::lay_tile);
    player->hands.prepare_flask(3);
    player->hold(&HandsChange::flask_x_cm, 0.0);
    player->hold(&HandsChange::swirl, 0.8);
    player->hold(&HandsChange::tap, 1.0);
    player->wait(5.0);
  }
  CHECK(one.shown() == "trial-run");
  CHECK(one.guide.shown()->words == two.guide.shown()->words);
  CHECK(one.guide.shown()->reason == two.guide.shown()->reason);
}

TEST_CASE("a guide leaves no trace on the bench or in the attempt") {
  Guided player;
  player.make_ready();
  BenchHands alone{spirit_vinegar()};
  alone.protect();
  alone.fill_burette(-0.5);
  alone.fill_jet();
  alone.hold(held(&HandsChange::eye_mm, player.hands.session().hands().eye_mm));
  CHECK(state_hash(alone.bench()) == state_hash(player.hands.bench()));
  CHECK(alone.session().attempt().changes == player.hands.session().attempt().changes);
}

TEST_CASE("a step that was done twice as shown is withdrawn") {
  Guided player;
  player.act(Deed::put_on_coat);
  for (int time = 0; time < 2; ++time) {
    CHECK(player.shown() == "goggles");
    CHECK(player.act(Deed::put_on_goggles) == "tap-shut");
    player.act(Deed::take_off_goggles);
  }
  CHECK(player.guide.knows("goggles"));
  CHECK(player.guide.next() == "goggles");
  CHECK(player.shown() == "");
}

TEST_CASE("a step that was done before its turn came is never shown") {
  Guided player;
  player.act(Deed::lay_tile);
  CHECK(player.guide.knows("tile"));
  player.make_ready();
  CHECK(player.shown() == "read-initial");
  player.act(Deed::take_tile_away);
  CHECK(player.write("trial/initial", "0.45") == "");
  CHECK(player.guide.next() == "tile");
}

TEST_CASE("a known step comes back after twenty seconds without progress, and goes once it is done") {
  Guided player;
  player.act(Deed::lay_tile);
  player.make_ready();
  player.act(Deed::take_tile_away);
  player.write("trial/initial", "0.45");
  CHECK(player.wait(kStuck_s - 1.0) == "");
  CHECK(player.wait(2.0) == "tile");
  CHECK(player.act(Deed::lay_tile) == "pipette");
  player.act(Deed::take_tile_away);
  CHECK(player.shown() == "");
}

TEST_CASE("a known step comes back when something else is done in its place, or when it is asked for") {
  for (const bool asks : {false, true}) {
    Guided player;
    player.act(Deed::lay_tile);
    player.make_ready();
    player.act(Deed::take_tile_away);
    player.write("trial/initial", "0.45");
    CHECK(player.shown() == "");
    if (asks) {
      player.guide.ask();
      player.look();
    } else {
      player.act(Deed::put_in_funnel);
      CHECK(player.guide.next() == "read-too-early");
      player.act(Deed::lift_out_funnel);
      CHECK(player.shown() == "");
      player.act(Deed::fill_pipette);
    }
    CHECK(player.shown() == "tile");
  }
}

TEST_CASE("an initial reading of a burette that is not ready is to be struck out") {
  Guided player;
  player.hands.protect();
  player.hands.fill_burette(0.5);
  CHECK(player.look() == "beaker-under");
  CHECK(player.write("trial/initial", "0.50") == "read-too-early");
  CHECK(player.guide.shown()->reason.find("air in the jet") != std::string::npos);
  CHECK(player.write("trial/initial", "") == "beaker-under");
}

TEST_CASE("a first reading put right while the colour stands sends nobody back to the tap") {
  Guided player;
  player.make_ready();
  player.hands.write("trial/initial", player.hands.read("trial/initial"));
  player.hands.act(Deed::lay_tile);
  player.hands.prepare_flask(3);
  player.hands.hold(held(&HandsChange::flask_x_cm, 0.0));
  RunPlan past;
  past.past_cm3 = 0.3;
  player.hands.titrate(past);
  player.wait(2.0);
  const std::string before(player.guide.next());
  CHECK(before != "trial-run");
  player.write("trial/initial", "0.55");
  CHECK(player.guide.next() == before);
}

TEST_CASE("a last reading put right spends no other flask") {
  Guided player;
  player.hands.protect();
  player.hands.run("trial");
  player.hands.prepare_flask(3);
  player.look();
  CHECK(player.guide.next() != "rinse-flask");
  player.write("trial/final", "21.60");
  CHECK(player.guide.next() != "rinse-flask");
}

TEST_CASE("with another bottle in the hand the titrant is to be taken up before anything is poured") {
  Guided player;
  player.hands.protect();
  player.hold(&HandsChange::tap, 0.0);
  player.act(Deed::take_up_sample);
  player.act(Deed::put_in_funnel);
  CHECK(player.guide.next() == "take-up-titrant");
  player.act(Deed::take_up_titrant);
  CHECK(player.guide.next() == "fill");
}

TEST_CASE("two titres within 0.10 cm3 end the runs; the trial never counts") {
  Guided player;
  const auto run = [&](const std::string& name, const char* final, const char* titre) {
    player.write(name + "/initial", "0.50");
    player.write(name + "/final", final);
    player.write(name + "/titre", titre);
  };
  run("trial", "22.00", "21.50");
  run("1", "22.00", "21.50");
  CHECK(guide_facts(player.hands.session(), view(player.hands.session())).run == "2");
  run("2", "22.15", "21.65");
  CHECK(guide_facts(player.hands.session(), view(player.hands.session())).run == "3");
  run("3", "22.25", "21.75");
  const GuideFacts facts = guide_facts(player.hands.session(), view(player.hands.session()));
  CHECK(facts.run.empty());
  CHECK(facts.agree);
  CHECK(facts.counting == std::vector<std::string>{"2", "3"});
  CHECK(*facts.expected_cm3 == 21.5);
}

}  // namespace halfdrop::test
