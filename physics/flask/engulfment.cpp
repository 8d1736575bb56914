#include "physics/flask/engulfment.h"

#include <cmath>

#include "physics/flask/wide.h"

namespace halfdrop {

namespace {

constexpr double kLn8 = 2.0794415416798357;  ///< from stage to stage grows eightfold

}  // namespace

double impact_strain2_per_s2(double impact_erg, double volume_cm3, double viscosity_cm2_s) {
  return impact_erg / (kImpactLasts_s * volume_cm3 * viscosity_cm2_s);
}

double engulfment_per_s(double strain2_per_s2) { return kEngulfed * std::sqrt(strain2_per_s2); }

// Implicit, so that no stage gives more than it has; whole quanta.
HALFDROP_WIDER static void engulf_cells(const float* strain2, std::size_t count, double number_s,
                                        double* fresh, double* meeting, double* mixed) {
  constexpr double kMagic = 0x1.8p52;  // rounds to whole numbers
  for (std::size_t i = 0; i < count; ++i) {
    const double number = std::sqrt(static_cast<double>(strain2[i])) * number_s;
    const double share = number / (1.0 + number);
    const double on = (fresh[i] * share + kMagic) - kMagic;
    const double in = (meeting[i] * share + kMagic) - kMagic;
    fresh[i] -= on;
    meeting[i] += on - in;
    mixed[i] += in;
  }
}

void engulf(std::span<const float> strain2, double duration_s, CellField& fresh, CellField& meeting,
            CellField& mixed) {
  engulf_cells(strain2.data(), strain2.size(), kEngulfed * duration_s / kLn8, fresh.data(), meeting.data(),
               mixed.data());
}

}  // namespace halfdrop
