// Which deeds and hands a drill has, and which belong to drills only.

#include "game/level/say.h"
#include "game/session/action.h"

namespace halfdrop {

namespace {

bool of_drills_only(Deed deed) { return deed == Deed::next_picture || deed == Deed::close_volume; }

/// Deeds with what a drill's bench does not have: pipette, flask, indicator, tile.
bool of_titrations_only(Deed deed) {
  switch (deed) {
    case Deed::lay_tile:
    case Deed::take_tile_away:
    case Deed::fill_pipette:
    case Deed::deliver_aliquot:
    case Deed::add_indicator:
    case Deed::add_second_indicator:
    case Deed::empty_flask:
    case Deed::rinse_flask:
    case Deed::take_up_titrant:
    case Deed::take_up_sample:
    case Deed::take_up_water:
    case Deed::rinse_pipette_with_water:
    case Deed::rinse_pipette_with_sample:
    case Deed::blow_out_pipette:
    case Deed::rinse_flask_with_sample:
    case Deed::dip_pipette:
    case Deed::lift_pipette:
    case Deed::wipe_pipette:
    case Deed::lean_pipette:
    case Deed::hold_pipette_free:
    case Deed::dissolve_standard:
    case Deed::pour_into_volumetric:
    case Deed::rinse_into_volumetric:
    case Deed::invert_volumetric:
      return true;
    default:
      return false;
  }
}

bool makes_up(Deed deed) {
  return deed == Deed::dissolve_standard || deed == Deed::pour_into_volumetric ||
         deed == Deed::rinse_into_volumetric || deed == Deed::invert_volumetric;
}

/// All that moves a piece, and none that takes a liquid out of a bottle.
bool moves_a_piece(Deed deed) {
  if (deed == Deed::lay_tile || deed == Deed::take_tile_away) return true;
  return !of_titrations_only(deed) && !of_drills_only(deed) && deed != Deed::touch_off_drop;
}

bool has_deed(DrillKind kind, Deed deed) {
  if (kind == DrillKind::know_apparatus) return moves_a_piece(deed);
  if (kind == DrillKind::read_meniscus) return deed == Deed::next_picture;
  if (of_titrations_only(deed) || deed == Deed::next_picture) return false;
  const bool fills = kind == DrillKind::fill_without_air;
  if (deed == Deed::close_volume) return !fills;
  return fills || (deed != Deed::put_in_funnel && deed != Deed::lift_out_funnel &&
                   deed != Deed::swing_over_edge && deed != Deed::swing_back);
}

/// The first hand that a drill has no use for; null when it has one for each.
const char* foreign_hand(DrillKind kind, const HandsChange& change) {
  if (kind == DrillKind::know_apparatus)
    return change.pour           ? "pour"
           : change.tilt_degrees ? "tilt"
           : change.tip          ? "tip"
           : change.fill         ? "fill"
                                 : nullptr;
  if (change.flask_x_cm || change.flask_y_cm) return "flask";
  if (change.swirl) return "swirl";
  if (change.wash) return "wash";
  if (change.tilt_degrees) return "tilt";
  if (change.valve) return "valve";
  if (change.tip) return "tip";
  if (change.fill) return "fill";
  if (change.pour && kind != DrillKind::fill_without_air) return "pour";
  if (change.clamp_mm && kind != DrillKind::fill_without_air) return "clamp";
  if (change.tap && kind == DrillKind::read_meniscus) return "tap";
  return nullptr;
}

std::string no_place(std::string_view name, const Drill& drill) {
  return say("refusal.not_in_drill",
             {{"what", std::string(name)}, {"drill", std::string(drill_name(drill.kind))}});
}

}  // namespace

std::optional<std::string> not_in_level(const Level& level, Deed deed) {
  if (!level.drill) {
    if (deed == Deed::add_second_indicator && !level.then)
      return say("refusal.one_endpoint", {{"what", std::string(deed_name(deed))}});
    if (makes_up(deed) && !level.standard) return say("refusal.no_standard_to_make");
    if (!of_drills_only(deed)) return std::nullopt;
    return say("refusal.only_in_drill", {{"what", std::string(deed_name(deed))}});
  }
  if (has_deed(level.drill->kind, deed)) return std::nullopt;
  return no_place(deed_name(deed), *level.drill);
}

std::optional<std::string> not_in_level(const Level& level, const HandsChange& change) {
  if (!level.drill) {
    if ((change.tip || change.fill) && !level.standard) return say("refusal.no_standard_to_make");
    if (!change.valve || level.pipette.by_hand) return std::nullopt;
    return std::string(refusal_text(Refusal::pipette_practised));
  }
  const char* const hand = foreign_hand(level.drill->kind, change);
  return hand == nullptr ? std::nullopt : std::optional(no_place(hand, *level.drill));
}

}  // namespace halfdrop
