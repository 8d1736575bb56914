#include "game/marking/cause_titles.h"

namespace halfdrop {

std::string_view cause_title(Cause cause) {
  switch (cause) {
    case Cause::rounding:
      return "Rounding of the readings to 0.05";
    case Cause::misreading:
      return "Figures misread or miswritten";
    case Cause::meniscus_edge:
      return "Upper edge of the meniscus read for the bottom";
    case Cause::parallax_initial:
      return "Eye not level at the initial reading";
    case Cause::parallax_final:
      return "Eye not level at the final reading";
    case Cause::burette_scale:
      return "The burette's own scale error";
    case Cause::jet_air:
      return "Air in the jet";
    case Cause::hanging_drop:
      return "Liquid hanging at the tip";
    case Cause::funnel_drips:
      return "Drips from the funnel";
    case Cause::refill:
      return "Refilled between the readings";
    case Cause::missed_flask:
      return "Titrant that missed the flask";
    case Cause::flask_wall:
      return "Titrant left on the flask's wall";
    case Cause::titrant_strength:
      return "Titrant weaker or stronger than reckoned";
    case Cause::aliquot:
      return "More or less sample than one true aliquot";
    case Cause::flask_residue:
      return "What was left in the flask from before";
    case Cause::swirled_out:
      return "Lost over the flask's rim";
    case Cause::indicator_blank:
      return "First visible change against equivalence";
    case Cause::overshoot:
      return "Past the first visible change";
  }
  return "";
}

}  // namespace halfdrop
