#include "game/level/drill_of_level.h"

#include <algorithm>

#include "game/level/level_fields.h"
#include "physics/bench/hands.h"
#include "physics/random.h"

namespace halfdrop {

namespace {

/// How far off level an eye starts: 15 mm are worth 0.03 cm3, 80 mm 0.15 cm3.
constexpr double kEyeLeastOff_mm = 15.0, kEyeMostOff_mm = 80.0;
/// Dark edge of the card from the meniscus; it belongs about two divisions, 2 mm, below (practice of old
/// manuals).
constexpr double kCardLeastOff_mm = 8.0, kCardMostOff_mm = 30.0;
constexpr double kCardOut_mm = 200.0;
constexpr int kCardOutEvery = 3;
/// Nobody is asked to read what lies on the first or the last mark.
constexpr double kFromTheEnds_cm3 = 0.02;

double either_side(Random& random, double least, double most) {
  const double size = random.uniform(least, most);
  return random.uniform() < 0.5 ? -size : size;
}

MeniscusPicture draw_picture(const BuretteSpec& burette, double reading_cm3, bool card_out, Random& random) {
  const double mm_per_cm3 = burette.scale_length_mm / burette.nominal_cm3;
  const double level_mm = -reading_cm3 * mm_per_cm3;
  const double eye_mm = level_mm + either_side(random, kEyeLeastOff_mm, kEyeMostOff_mm);
  const double card_in_mm = level_mm + either_side(random, kCardLeastOff_mm, kCardMostOff_mm);
  const double card_mm = card_out ? level_mm + kCardOut_mm : card_in_mm;
  const auto reach = [](double mm) { return std::clamp(mm, kEyeLowest_mm, kEyeHighest_mm); };
  return {reading_cm3, reach(eye_mm), reach(card_mm)};
}

std::vector<MeniscusPicture> draw_pictures(const Level& level, Random& random) {
  const int count = level.drill->pictures;
  const std::vector<std::size_t> order = shuffled(static_cast<std::size_t>(count), random);
  const double low = kFromTheEnds_cm3, high = level.burette.nominal_cm3 - kFromTheEnds_cm3;
  std::vector<MeniscusPicture> pictures;
  for (const std::size_t part : order) {
    const double reading_cm3 = low + (high - low) * (static_cast<double>(part) + random.uniform()) / count;
    const bool card_out = static_cast<int>(random.uniform() * kCardOutEvery) == 0;
    pictures.push_back(draw_picture(level.burette, reading_cm3, card_out, random));
  }
  return pictures;
}

}  // namespace

DrillSpec drill_spec(const Level& level, std::uint64_t seed) {
  Random random = Random::stream(seed, 0, Purpose::drill);
  DrillSpec spec;
  if (level.drill->kind == DrillKind::read_meniscus) spec.pictures = draw_pictures(level, random);
  if (level.drill->kind == DrillKind::deliver_exactly) {
    spec.volumes = static_cast<int>(level.drill->deliveries.size());
    spec.filled_to_cm3 = random.uniform(0.1, kMostFilledBelowZero_cm3);
  }
  return spec;
}

}  // namespace halfdrop
