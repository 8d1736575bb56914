#include "game/session/action.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "game/level/nearest.h"
#include "game/level/say.h"
#include "game/session/apparatus.h"
#include "physics/burette/rinsing.h"

namespace halfdrop {

namespace {

constexpr std::size_t kLongestText = 40;

constexpr std::array<std::string_view, kDeeds> kDeedNames = {"put on coat",
                                                             "put on goggles",
                                                             "take off goggles",
                                                             "put in funnel",
                                                             "lift out funnel",
                                                             "put beaker under jet",
                                                             "take beaker away",
                                                             "empty beaker",
                                                             "lay tile",
                                                             "take tile away",
                                                             "fill pipette",
                                                             "deliver aliquot",
                                                             "add indicator",
                                                             "touch off drop",
                                                             "flick jet",
                                                             "empty flask",
                                                             "rinse flask",
                                                             "wipe bench",
                                                             "take up titrant",
                                                             "take up sample",
                                                             "take up water",
                                                             "rinse pipette with water",
                                                             "rinse pipette with sample",
                                                             "blow out pipette",
                                                             "rinse flask with sample",
                                                             "next picture",
                                                             "close volume",
                                                             "swing burette over edge",
                                                             "swing burette back",
                                                             "dip pipette",
                                                             "lift pipette",
                                                             "wipe pipette",
                                                             "lean pipette on flask",
                                                             "hold pipette free",
                                                             "add second indicator",
                                                             "dissolve standard",
                                                             "pour into volumetric flask",
                                                             "rinse into volumetric flask",
                                                             "invert volumetric flask"};

struct HandRange {
  std::string_view name;
  std::optional<double> HandsChange::*value;
  double low, high;
};

const std::array<HandRange, 13> kHandRanges = {
    {{"tap", &HandsChange::tap, 0.0, 1.0},
     {"eye", &HandsChange::eye_mm, kEyeLowest_mm, kEyeHighest_mm},
     {"flask", &HandsChange::flask_x_cm, -kFlaskReach_cm, kFlaskReach_cm},
     {"flask", &HandsChange::flask_y_cm, 0.0, kFlaskLift_cm},
     {"swirl", &HandsChange::swirl, 0.0, 1.0},
     {"wash", &HandsChange::wash, 0.0, 1.0},
     {"pour", &HandsChange::pour, 0.0, 1.0},
     {"tilt", &HandsChange::tilt_degrees, 0.0, kFlat_degrees},
     {"card", &HandsChange::card_mm, kEyeLowest_mm, kEyeHighest_mm},
     {"clamp", &HandsChange::clamp_mm, kClampLowest_mm, kClampHighest_mm},
     {"valve", &HandsChange::valve, -1.0, 1.0},
     {"tip", &HandsChange::tip, 0.0, 1.0},
     {"fill", &HandsChange::fill, 0.0, 1.0}}};

std::string short_number(double value) {
  std::string text = std::to_string(value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

/// Letters, not bytes: of UTF-8, every byte that does not continue another.
std::size_t characters(std::string_view text) {
  const auto begins = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; };
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), begins));
}

bool asks_for_pieces(const Level& level) {
  return level.drill && level.drill->kind == DrillKind::know_apparatus;
}

/// Of what the jet or the burette is in the way of, and the other way about.
std::string_view jet_refusal_text(Refusal refusal) {
  switch (refusal) {
    case Refusal::jet_would_dip:
      return say("refusal.jet_would_dip");
    case Refusal::funnel_in_the_way:
      return say("refusal.funnel_in_the_way");
    case Refusal::burette_in_hand:
      return say("refusal.burette_in_hand");
    case Refusal::jet_in_the_way:
      return say("refusal.jet_in_the_way");
    case Refusal::burette_over_edge:
      return say("refusal.burette_over_edge");
    case Refusal::jet_too_low:
      return say("refusal.jet_too_low");
    case Refusal::bench_in_the_way:
      return say("refusal.bench_in_the_way");
    case Refusal::jet_would_dip_down:
      return say("refusal.jet_would_dip_down");
    default:
      return "";
  }
}

/// Of a standard that is made up on the bench.
std::string_view preparation_refusal_text(Refusal refusal) {
  switch (refusal) {
    case Refusal::nothing_to_dissolve:
      return say("refusal.nothing_to_dissolve");
    case Refusal::nothing_to_pour:
      return say("refusal.nothing_to_pour");
    case Refusal::volumetric_full:
      return say("refusal.volumetric_full");
    case Refusal::nothing_made_up:
      return say("refusal.nothing_made_up");
    default:
      return "";
  }
}

std::string_view pipette_refusal_text(Refusal refusal) {
  switch (refusal) {
    case Refusal::pipette_full:
      return say("refusal.pipette_full");
    case Refusal::pipette_empty:
      return say("refusal.pipette_empty");
    case Refusal::pipette_by_hand:
      return say("refusal.pipette_by_hand");
    case Refusal::pipette_practised:
      return say("refusal.pipette_practised");
    case Refusal::pipette_in_use:
      return say("refusal.pipette_in_use");
    case Refusal::nothing_to_wipe:
      return say("refusal.nothing_to_wipe");
    case Refusal::pipette_over_flask:
      return say("refusal.pipette_over_flask");
    default:
      return preparation_refusal_text(refusal);
  }
}

}  // namespace

std::string_view deed_name(Deed deed) { return kDeedNames[static_cast<std::size_t>(deed)]; }

std::optional<Deed> deed_from_name(std::string_view name) {
  const auto found = std::find(kDeedNames.begin(), kDeedNames.end(), name);
  if (found == kDeedNames.end()) return std::nullopt;
  return static_cast<Deed>(found - kDeedNames.begin());
}

std::string_view refusal_text(Refusal refusal) {
  switch (refusal) {
    case Refusal::already_done:
      return say("refusal.already_done");
    case Refusal::not_there:
      return say("refusal.not_there");
    case Refusal::flask_in_the_way:
      return say("refusal.flask_in_the_way");
    case Refusal::beaker_in_the_way:
      return say("refusal.beaker_in_the_way");
    case Refusal::nothing_hangs:
      return say("refusal.nothing_hangs");
    case Refusal::nothing_to_touch:
      return say("refusal.nothing_to_touch");
    case Refusal::flask_under_jet:
      return say("refusal.flask_under_jet");
    case Refusal::bottle_empty:
      return say("refusal.bottle_empty");
    case Refusal::flask_full:
      return say("refusal.flask_full");
    case Refusal::last_picture:
      return say("refusal.last_picture");
    case Refusal::no_volume_left:
      return say("refusal.no_volume_left");
    case Refusal::still_falls:
      return say("refusal.still_falls");
    default: {
      const std::string_view text = jet_refusal_text(refusal);
      return text.empty() ? pipette_refusal_text(refusal) : text;
    }
  }
}

std::vector<std::string> run_names(const Level& level) {
  if (level.drill) return {};
  std::vector<std::string> names = {"trial"};
  for (int run = 1; run <= level.accurate_runs; ++run) names.push_back(std::to_string(run));
  return names;
}

std::span<const std::string_view> reading_rows(const Level& level) {
  static constexpr std::array<std::string_view, 2> kOne = {"/initial", "/final"};
  static constexpr std::array<std::string_view, 3> kTwo = {"/initial", "/first endpoint", "/final"};
  if (level.then) return kTwo;
  return kOne;
}

std::span<const std::string_view> titre_rows(const Level& level) {
  static constexpr std::array<std::string_view, 3> kOne = {"/initial", "/final", "/titre"};
  static constexpr std::array<std::string_view, 5> kTwo = {"/initial", "/first endpoint", "/first titre",
                                                           "/final", "/titre"};
  if (level.then) return kTwo;
  return kOne;
}

std::vector<std::string> sheet_cells(const Level& level) {
  std::vector<std::string> cells;
  if (level.standard) cells = {kBottleBefore, kBottleAfter};
  for (const std::string& run : run_names(level)) {
    for (const std::string_view row : titre_rows(level)) cells.push_back(run + std::string(row));
    cells.push_back(run + "/counts");
  }
  for (const CalculationStep& step : level.calculation) cells.push_back(step.cell);
  const int readings = level.drill ? drill_readings(*level.drill) : 0;
  for (int number = 1; number <= readings; ++number) cells.push_back(reading_cell(number));
  const int pieces = asks_for_pieces(level) ? static_cast<int>(kPieces) : 0;
  for (int number = 1; number <= pieces; ++number) cells.push_back(piece_cell(number));
  return cells;
}

std::string reading_cell(int number) { return "reading/" + std::to_string(number); }

std::optional<std::string> check_hands(const HandsChange& change) {
  for (const HandRange& hand : kHandRanges) {
    const std::optional<double>& value = change.*hand.value;
    if (!value) continue;
    if (std::isfinite(*value) && *value >= hand.low && *value <= hand.high) continue;
    return std::string(hand.name) + " is out of range: expected " + short_number(hand.low) + " to " +
           short_number(hand.high);
  }
  return std::nullopt;
}

std::optional<std::string> check_writing(const Level& level, const Writing& writing) {
  if (characters(writing.text) > kLongestText) return say("refusal.text_too_long");
  const std::vector<std::string> cells = sheet_cells(level);
  if (std::find(cells.begin(), cells.end(), writing.cell) == cells.end()) {
    const std::vector<std::string_view> known(cells.begin(), cells.end());
    return "the sheet has no cell \"" + writing.cell + "\"" + did_you_mean(writing.cell, known);
  }
  if (asks_for_pieces(level) && writing.text != kDoNotKnow && !piece_from_name(writing.text))
    return "no piece is called \"" + writing.text + "\"";
  if (writing.cell.ends_with("/counts") && !writing.text.empty() && writing.text != "yes") {
    return "\"" + writing.text + "\" is no tick: expected \"yes\", or nothing to clear it";
  }
  return std::nullopt;
}

}  // namespace halfdrop
