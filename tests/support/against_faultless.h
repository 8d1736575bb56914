#pragma once
// A level performed with mistakes, against the faultless performance of the same seed.

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "game/demonstrator/demonstrator.h"
#include "game/marking/marks.h"
#include "tests/support/good_level.h"

namespace halfdrop::test {

class AgainstFaultless {
 public:
  /// The flask is four times coarser than a player's, and there are two accurate runs: quicker.
  explicit AgainstFaultless(Level level, std::uint64_t seed = 3) : seed_(seed), level_(std::move(level)) {
    level_.accurate_runs = 2;
    right_ = performed({});
  }
  /// `path` from the project's folder.
  explicit AgainstFaultless(const std::string& path) : AgainstFaultless(read(path)) {}

  [[nodiscard]] MarkedAttempt performed(const std::vector<std::string>& mistakes,
                                        double fineness = 0.25) const {
    Level level = level_;
    level.flask.fineness = fineness;
    const Performance performance = perform(level, seed_, "tester", mistakes);
    CHECK_MESSAGE(!performance.gave_up.has_value(), performance.gave_up.value_or(""));
    return mark(performance.attempt);
  }
  [[nodiscard]] MarkedAttempt with(std::string_view mistake) const {
    return performed(std::vector<std::string>{std::string(mistake)});
  }

  [[nodiscard]] const Level& level() const { return level_; }
  [[nodiscard]] const MarkedAttempt& right() const { return right_; }

  /// What a cause changed by: at most in one accurate run, and on average over those that both have.
  struct Change {
    double largest_cm3 = 0.0, mean_cm3 = 0.0;
  };
  [[nodiscard]] Change change_of(Cause cause, const MarkedAttempt& wrong) const {
    Change change;
    int runs = 0;
    for (const TitreRow& row : wrong.titres) {
      for (const TitreRow& other : right_.titres) {
        if (row.run == "trial" || other.run != row.run || !row.breakdown || !other.breakdown) continue;
        const double by = row.breakdown->of(cause) - other.breakdown->of(cause);
        if (std::fabs(by) > std::fabs(change.largest_cm3)) change.largest_cm3 = by;
        change.mean_cm3 += by;
        ++runs;
      }
    }
    REQUIRE(runs > 0);
    change.mean_cm3 /= runs;
    return change;
  }

  /// Rounding aside: up to 0.05 cm3 a reading either way, as the meniscus happens to stand between the marks.
  [[nodiscard]] Cause changed_most(const MarkedAttempt& wrong) const {
    const auto size = [&](Cause cause) { return std::fabs(change_of(cause, wrong).mean_cm3); };
    Cause most = Cause::misreading;
    for (std::size_t i = 0; i < kCauses; ++i) {
      const auto cause = static_cast<Cause>(i);
      if (cause != Cause::rounding && size(cause) > size(most)) most = cause;
    }
    return most;
  }

 private:
  static Level read(const std::string& path) {
    Result<Level> level = read_level(source_file(path));
    REQUIRE_MESSAGE(level.has_value(), why_not(level));
    return *level;
  }

  std::uint64_t seed_;
  Level level_;
  MarkedAttempt right_;
};

}  // namespace halfdrop::test
