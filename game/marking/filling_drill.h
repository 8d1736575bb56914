#pragma once
// The drill "fill without air": the burette as it stood when its first reading was written.

#include <optional>
#include <string>

#include "game/session/session.h"

namespace halfdrop {

struct FillingDrill {
  bool looked = false;  ///< a reading was written; otherwise the rest is the bench at the end
  double jet_air_cm3 = 0.0;
  bool funnel_in = false;
  double funnel_cm3 = 0.0;  ///< still to drip from it
  double hanging_cm3 = 0.0;
  bool running = false;   ///< water still left at the tip
  bool on_scale = false;  ///< meniscus between the first and the last mark
  double true_cm3 = 0.0, apparent_cm3 = 0.0;
  double poured_cm3 = 0.0;  ///< into the burette or its funnel, until then
  double spilt_cm3 = 0.0;   ///< came onto the bench all along, wiped up or not
  std::string text;         ///< reading as written
  std::optional<double> written_cm3;
  Tick tick = 0;

  [[nodiscard]] std::optional<double> error_cm3() const;
};

/// Follows a replay of such a drill.
class FillingWatch {
 public:
  /// Only of changes that were not refused.
  void after_change(const Session& session, const Change& change);
  [[nodiscard]] FillingDrill figures(const Session& session);

 private:
  void look(const Session& session);

  FillingDrill drill_;
};

}  // namespace halfdrop
