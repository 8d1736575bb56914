#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace halfdrop {

/// A titration curve as `halfdrop-desk curve --json` prints it (DEVELOPERS.md).
struct CurveReport {
  struct Bottle {
    std::string_view substance;
    double mol_dm3 = 0.0;
    std::vector<double> pka{};  ///< where they were given; else the shelf's are used
  };
  struct Equivalence {
    double volume_cm3 = 0.0, ph = 0.0;
    double jump_ph = 0.0;  ///< from 2 % of the volume before to 2 % past
  };
  /// Volumes between which the colour changes, seen on the tile; see physics/flask/visible_change.h.
  struct Change {
    std::string_view vision;
    double first_cm3 = 0.0, middle_cm3 = 0.0, last_cm3 = 0.0;
    std::string_view endpoint;  ///< first, middle or last
    double endpoint_cm3 = 0.0, equivalence_cm3 = 0.0;
    bool fits = false, gradual = false;
  };
  struct Point {
    double volume_cm3 = 0.0, ph = 0.0;
    std::string colour;
  };
  struct HandbookRange {
    double low_ph = 0.0, high_ph = 0.0;
  };

  Bottle flask, burette;
  double aliquot_cm3 = 0.0, temperature_c = 25.0, pkw = 14.0;
  bool ideal = false;
  std::vector<Equivalence> equivalences;
  std::optional<std::string_view> indicator;
  int drops = 0;
  std::vector<HandbookRange> handbook;
  std::vector<Change> changes;               ///< that each vision sees; normal vision first
  std::optional<double> visible_change_cm3;  ///< endpoint, for normal vision, of the change that fits best
  bool unfit = false;
  std::vector<std::string> warnings;
  std::vector<Point> points;
};

/// One JSON object on one line, without its line end.
[[nodiscard]] std::string curve_json(const CurveReport& report);

}  // namespace halfdrop
