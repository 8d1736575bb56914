// What the drill "deliver exactly" says of a hand.

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/criteria.h"
#include "game/marking/drill_marks.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

std::string seen_of(const VolumeDelivered& volume) {
  const bool is_volume = volume.asked.what == Delivery::What::volume;
  const std::string what = sentence(asked_text(volume.asked));
  const std::string asked =
      is_volume ? what
                : say("drill.delivery.drop", {{"what", what}, {"size", cm3_text(volume.asked_cm3, 3)}});
  const std::string delivered = cm3_text(*volume.delivered_cm3, 3),
                    error = signed_cm3_text(*volume.error_cm3(), 3);
  if (volume.hanging_cm3 <= kSeenHanging_cm3)
    return say("drill.delivery.seen", {{"asked", asked}, {"delivered", delivered}, {"error", error}});
  return say("drill.delivery.seen_hanging", {{"asked", asked},
                                             {"delivered", delivered},
                                             {"error", error},
                                             {"hanging", cm3_text(volume.hanging_cm3, 3)}});
}

Phrase advice_for(const VolumeDelivered& volume) {
  constexpr double kNothing_cm3 = 0.0005;
  if (*volume.delivered_cm3 < kNothing_cm3) return "drill.delivery.advice.nothing";
  const bool too_much = *volume.error_cm3() > 0.0;
  switch (volume.asked.what) {
    case Delivery::What::one_drop:
      return too_much ? Phrase("drill.delivery.advice.drop_less") : Phrase("drill.delivery.advice.drop_more");
    case Delivery::What::half_drop:
      return too_much ? Phrase("drill.delivery.advice.half_less") : Phrase("drill.delivery.advice.half_more");
    case Delivery::What::volume:
      break;
  }
  return too_much ? Phrase("drill.delivery.advice.volume_less") : Phrase("drill.delivery.advice.volume_more");
}

constexpr Phrase kNothingClosed{"drill.delivery.advice.say_it"};

/// Words for all that were never said to be delivered, when they are told as one.
std::string never_said_of(const DeliveryDrill& drill) {
  const auto open =
      std::count_if(drill.volumes.begin(), drill.volumes.end(),
                    [](const VolumeDelivered& volume) { return !volume.delivered_cm3.has_value(); });
  if (open < kSaidOnce) return {};
  const auto all = static_cast<std::ptrdiff_t>(drill.volumes.size());
  return say("drill.delivery.only_some",
             {{"count", std::to_string(all - open)}, {"of", std::to_string(all)}});
}

Finding judge(const VolumeDelivered& volume, std::size_t number, const Level& level,
              const std::string& never_said) {
  const bool is_volume = volume.asked.what == Delivery::What::volume;
  const std::vector<Band>& bands = is_volume ? level.hand_bands : level.drill->drop_bands;
  Finding finding{Score::hand,
                  "volume-" + std::to_string(number),
                  false,
                  0.0,
                  static_cast<double>(bands.front().points),
                  "",
                  volume.tick,
                  volume.error_cm3(),
                  ""};
  if (!volume.delivered_cm3) {
    finding.judged = false;
    finding.seen = never_said;
    if (never_said.empty())
      finding.seen = say("drill.delivery.never_said", {{"asked", sentence(asked_text(volume.asked))}});
    finding.advice = kNothingClosed;
    return finding;
  }
  // A wide band may reach from half a drop down to none.
  if (*volume.delivered_cm3 > 0.0) finding.points = band_points(bands, *volume.error_cm3());
  finding.met = finding.points == finding.of;
  finding.seen = seen_of(volume);
  if (!finding.met) finding.advice = advice_for(volume);
  return finding;
}

}  // namespace

void find_in_delivery(const DeliveryDrill& drill, const Level& level, std::vector<Finding>& findings) {
  std::vector<Finding> hand;
  const std::string never_said = never_said_of(drill);
  for (const VolumeDelivered& volume : drill.volumes)
    hand.push_back(judge(volume, hand.size() + 1, level, never_said));
  append_findings(Score::hand, std::move(hand), findings, kNothingClosed);
}

}  // namespace halfdrop
