#pragma once
// The drill "deliver exactly": what the beaker truly got, by the ledger, against what was asked.

#include <optional>
#include <string>
#include <vector>

#include "game/session/session.h"

namespace halfdrop {

/// A part-drop that is touched off, about (practice of bench manuals).
inline constexpr double kHalfDrop_cm3 = 0.02;

/// What an entry of the drill asks for, cm3: one drop is what falls here of a drop that grew slowly.
[[nodiscard]] double asked_cm3(const BenchSpec& spec, const Delivery& delivery);
/// "10.00 cm³", "one drop", "half a drop".
[[nodiscard]] std::string asked_text(const Delivery& delivery);

struct VolumeDelivered {
  Delivery asked;
  double asked_cm3 = 0.0;
  std::optional<double> delivered_cm3;  ///< nothing: it was not closed
  double hanging_cm3 = 0.0;             ///< at the tip when it was closed: not delivered
  Tick tick = 0;                        ///< when it was closed

  [[nodiscard]] std::optional<double> error_cm3() const;
};

struct DeliveryDrill {
  std::vector<VolumeDelivered> volumes;
};

/// Follows a replay of such a drill.
class DeliveryWatch {
 public:
  /// Only of changes that were not refused.
  void after_change(const Session& session, const Change& change);
  [[nodiscard]] DeliveryDrill figures(const Session& session) const;

 private:
  struct Closed {
    double delivered_cm3 = 0.0, hanging_cm3 = 0.0;
    Tick tick = 0;
  };
  std::vector<Closed> closed_;
  Quanta in_beaker_ = 0;  ///< everything that had come into the beaker when the last volume was closed
};

}  // namespace halfdrop
