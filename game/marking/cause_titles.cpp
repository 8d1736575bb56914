#include "game/marking/cause_titles.h"

#include <array>

#include "game/level/say.h"

namespace halfdrop {

std::string_view cause_title(Cause cause) {
  static constexpr std::array<Phrase, kCauses> kTitles = {"cause.rounding",
                                                          "cause.misreading",
                                                          "cause.meniscus_edge",
                                                          "cause.parallax_initial",
                                                          "cause.parallax_final",
                                                          "cause.burette_scale",
                                                          "cause.film",
                                                          "cause.jet_air",
                                                          "cause.hanging_drop",
                                                          "cause.funnel_drips",
                                                          "cause.refill",
                                                          "cause.leak",
                                                          "cause.missed_flask",
                                                          "cause.flask_wall",
                                                          "cause.titrant_strength",
                                                          "cause.aliquot",
                                                          "cause.flask_residue",
                                                          "cause.swirled_out",
                                                          "cause.indicator_blank",
                                                          "cause.carbon_dioxide",
                                                          "cause.overshoot"};
  return kTitles[static_cast<std::size_t>(cause)];
}

std::string_view cause_title(Cause cause, double cm3) {
  if (cause == Cause::overshoot) return cm3 > 0.0 ? say("cause.overshoot.high") : say("cause.overshoot.low");
  if (cause == Cause::aliquot) return cm3 > 0.0 ? say("cause.aliquot.high") : say("cause.aliquot.low");
  return cause_title(cause);
}

}  // namespace halfdrop
