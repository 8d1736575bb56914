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
  };
  struct Equivalence {
    double volume_cm3 = 0.0, ph = 0.0;
    double jump_ph = 0.0;  ///< from 2 % of the volume before to 2 % past
  };
  /// Volumes between which the colour changes, seen on the tile; see physics/flask/titration.h.
  struct Change {
    std::string_view vision;
    double first_cm3 = 0.0, middle_cm3 = 0.0, last_cm3 = 0.0;
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
  std::vector<Change> changes;  ///< one for each vision that sees any; normal vision first
  bool unfit = false;
  std::vector<std::string> warnings;
  std::vector<Point> points;
};

/// One JSON object on one line, without its line end.
[[nodiscard]] std::string curve_json(const CurveReport& report);

}  // namespace halfdrop
