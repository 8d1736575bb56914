#pragma once
// The results sheet in the demonstrator's hand. Readings and titres are whole hundredths of a cm3.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "game/demonstrator/at_bench.h"

namespace halfdrop {

class Paper {
 public:
  explicit Paper(AtBench& bench) : bench_(bench) {}

  void initial(const std::string& run, int hundredths);
  /// Writes the titre too.
  void final(const std::string& run, int hundredths);
  [[nodiscard]] int titre_hundredths(const std::string& run) const { return titres_.at(run); }
  /// The two accurate titres nearest to each other.
  struct Pair {
    std::string one, other;
    int apart_hundredths = 0;
  };
  [[nodiscard]] std::optional<Pair> nearest_pair(const std::vector<std::string>& accurate_runs) const;
  /// Ticks these runs, and from their mean works down the level's calculation on the figures as written.
  void work_out(const std::vector<std::string>& counted_runs);

 private:
  void write_number(const std::string& cell, const std::string& text);
  void work_step(const CalculationStep& step, bool last);

  AtBench& bench_;
  std::map<std::string, int> initials_, titres_;
  std::map<std::string, double> written_;
};

/// "0.05", "21.60"
[[nodiscard]] std::string hundredths_text(int hundredths);
/// A positive number to so many significant figures, never with an exponent: 0.0021 to 3 is "0.00210".
[[nodiscard]] std::string figures_text(double value, int figures);

}  // namespace halfdrop
