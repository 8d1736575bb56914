#pragma once
// What the demonstrator writes on the results sheet. Readings and titres are whole hundredths of a cm3.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "game/demonstrator/at_bench.h"
#include "game/demonstrator/habits.h"

namespace halfdrop {

class Pencil {
 public:
  Pencil(AtBench& bench, const Habits& habits) : bench_(bench), habits_(habits) {}

  /// A weighing, as the balance showed it.
  void weighing(const std::string& cell, const std::string& text) { write_number(cell, text); }
  void initial(const std::string& run, int hundredths);
  /// At the first of two endpoints; writes the first titre too.
  void first_endpoint(const std::string& run, int hundredths);
  /// Writes the titre too.
  void final(const std::string& run, int hundredths);
  /// Changes a run's last reading and titre so that the titre is another run's.
  void adjust(const std::string& run, const std::string& to_run);
  [[nodiscard]] int titre_hundredths(const std::string& run) const { return titres_.at(run); }
  /// The two accurate titres nearest to each other; of two endpoints, in whichever they are further apart.
  struct Pair {
    std::string one, other;
    int apart_hundredths = 0;
  };
  [[nodiscard]] std::optional<Pair> nearest_pair(const std::vector<std::string>& accurate_runs) const;
  /// Ticks these runs, and from their mean works down the level's calculation on the figures as written.
  void work_out(const std::vector<std::string>& counted_runs);

 private:
  /// As the hands write figures: with two decimals, unless they know no better.
  [[nodiscard]] std::string figure(int hundredths) const;
  void write_titre(const std::string& run, int final_hundredths);
  void write_number(const std::string& cell, const std::string& text);
  void work_step(const CalculationStep& step, bool last);
  /// What the hands make of a line, from the figures above it as written.
  [[nodiscard]] std::optional<double> worked_out(CalculationStep step) const;
  [[nodiscard]] int figures_of(const CalculationStep& step, bool last) const;

  [[nodiscard]] int apart(const std::string& one, const std::string& other) const;
  [[nodiscard]] static int mean_of(const std::vector<std::string>& runs,
                                   const std::map<std::string, int>& titres);

  AtBench& bench_;
  const Habits& habits_;
  std::map<std::string, int> initials_, titres_, first_titres_;
  std::map<std::string, double> written_;
};

/// "0.05", "21.60"
[[nodiscard]] std::string hundredths_text(int hundredths);
/// A positive number to so many significant figures, never with an exponent: 0.0021 to 3 is "0.00210".
[[nodiscard]] std::string figures_text(double value, int figures);

}  // namespace halfdrop
