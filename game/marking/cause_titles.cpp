#include "game/marking/cause_titles.h"

#include <array>

namespace halfdrop {

std::string_view cause_title(Cause cause) {
  static constexpr std::array<std::string_view, kCauses> kTitles = {
      "Rounding of the readings",
      "Reading not what the eye saw",
      "Top of the meniscus read, not the bottom",
      "Eye off level at the initial reading",
      "Eye off level at the final reading",
      "The burette's own scale",
      "Liquid left on the burette's wall",
      "Air in the jet",
      "Drop hanging at the tip",
      "Funnel dripped into the burette",
      "Burette refilled during the run",
      "Tap leaked at its plug",
      "Titrant that missed the flask",
      "Titrant left on the flask's wall",
      "Titrant diluted, or off its label",
      "Aliquot more or less than it should be",
      "Something in the flask before",
      "Liquid swirled out of the flask",
      "The indicator's own share",
      "Carbon dioxide in the flask",
      "Endpoint passed, or not reached"};
  return kTitles[static_cast<std::size_t>(cause)];
}

std::string_view cause_title(Cause cause, double cm3) {
  if (cause == Cause::overshoot) return cm3 > 0.0 ? "Endpoint passed" : "Endpoint not reached";
  if (cause == Cause::aliquot)
    return cm3 > 0.0 ? "Aliquot more than it should be" : "Aliquot less than it should be";
  return cause_title(cause);
}

}  // namespace halfdrop
