#include "game/marking/cause_titles.h"

namespace halfdrop {

std::string_view cause_title(Cause cause) {
  switch (cause) {
    case Cause::rounding:
      return "Rounding of the readings";
    case Cause::misreading:
      return "Reading not what the eye saw";
    case Cause::meniscus_edge:
      return "Top of the meniscus read, not the bottom";
    case Cause::parallax_initial:
      return "Eye off level at the initial reading";
    case Cause::parallax_final:
      return "Eye off level at the final reading";
    case Cause::burette_scale:
      return "The burette's own scale";
    case Cause::jet_air:
      return "Air in the jet";
    case Cause::hanging_drop:
      return "Drop hanging at the tip";
    case Cause::funnel_drips:
      return "Funnel dripped into the burette";
    case Cause::refill:
      return "Burette refilled during the run";
    case Cause::missed_flask:
      return "Titrant that missed the flask";
    case Cause::flask_wall:
      return "Titrant left on the flask's wall";
    case Cause::titrant_strength:
      return "Titrant diluted, or off its label";
    case Cause::aliquot:
      return "Aliquot more or less than it should be";
    case Cause::flask_residue:
      return "Something in the flask before";
    case Cause::swirled_out:
      return "Liquid swirled out of the flask";
    case Cause::indicator_blank:
      return "The indicator's own share";
    case Cause::overshoot:
      return "Endpoint passed, or not reached";
  }
  return "";
}

}  // namespace halfdrop
