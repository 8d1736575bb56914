#pragma once
// What the player wrote, cell by cell, with everything that stood there before.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "game/session/attempt.h"

namespace halfdrop {

struct Entry {
  Tick tick = 0;
  std::string text;  ///< empty: struck out
};

class ResultsSheet {
 public:
  /// In the order of writing.
  void write(Tick tick, const Writing& writing);

  /// What stands in a cell now; empty if nothing.
  [[nodiscard]] std::string text(const std::string& cell) const;
  /// The same as a number; nothing when it is none.
  [[nodiscard]] std::optional<double> number(const std::string& cell) const;
  /// When a cell was last written; 0 if never.
  [[nodiscard]] Tick written_at(const std::string& cell) const;
  /// Everything ever written into a cell, oldest first.
  [[nodiscard]] const std::vector<Entry>& history(const std::string& cell) const;
  /// How often something that stood in a cell was replaced by something else or struck out.
  [[nodiscard]] int corrections(const std::string& cell) const;

  /// Something stands in one of the run's cells.
  [[nodiscard]] bool begun(const std::string& run) const;
  [[nodiscard]] bool ticked(const std::string& run) const { return text(run + "/counts") == "yes"; }

 private:
  std::map<std::string, std::vector<Entry>> cells_;
};

/// A reading as the trade writes it: two decimals, the second 0 or 5 ("0.00", "21.65").
[[nodiscard]] bool written_to_half_a_division(const std::string& text);
/// Digits after the point, 0 without one ("2.15e-3" has 2).
[[nodiscard]] int decimals_written(const std::string& text);
/// Significant figures of a plain number; all digits of a whole number count ("2.150e-3" has 4, "0.0859" 3).
[[nodiscard]] int significant_figures(const std::string& text);
/// Half a unit of the last place written: 0.005 for "21.65".
[[nodiscard]] double half_unit_written(const std::string& text);

}  // namespace halfdrop
