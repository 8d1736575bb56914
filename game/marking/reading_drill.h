#pragma once
// The drill "read the meniscus": what the eye of one reader does over many pictures. Pure figures; what is
// said of them is drill_marks'.
//
// An error is written minus true, cm3; true is where the meniscus' lowest point stands on the printed scale.
// Slips of more than kSlip_cm3 (a wrong whole figure, the scale read upwards, the upper edge) are counted and
// left out of bias and spread: one of them would hide what thirty honest readings say.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "game/marking/statistics.h"
#include "game/session/session.h"

namespace halfdrop {

/// One picture and what was made of it: as it stood when its figure was last written while it was shown, or
/// when it was turned over.
struct PictureRead {
  int number = 0;                  ///< from 1
  bool shown = false;              ///< otherwise nothing below means anything
  double true_cm3 = 0.0;           ///< lowest point of the meniscus on the scale
  double apparent_cm3 = 0.0;       ///< the same as the eye saw it
  double apparent_edge_cm3 = 0.0;  ///< upper edge as the eye saw it
  Tick tick = 0;
  std::string text;  ///< as it stands on the paper
  std::optional<double> written_cm3;

  [[nodiscard]] bool read() const { return shown && written_cm3; }
  [[nodiscard]] double error_cm3() const { return *written_cm3 - true_cm3; }
  [[nodiscard]] double parallax_cm3() const { return apparent_cm3 - true_cm3; }
  [[nodiscard]] bool slip() const;
  [[nodiscard]] bool off_level() const;
};

/// How often a last figure was written, and how often the true readings called for it.
struct DigitCount {
  int written = 0, called_for = 0;
};

struct ReadingDrill {
  double to_cm3 = 0.05;
  std::vector<PictureRead> pictures;
  int read = 0, slips = 0;
  SampleStatistics errors;          ///< of the readings that are no slips
  double mean_size_cm3 = 0.0;       ///< of |error|, slips among them
  int off_level = 0;                ///< readings with an eye off level
  double off_level_cost_cm3 = 0.0;  ///< mean |parallax| of those
  std::array<DigitCount, 10> digits{};
  std::optional<int> liked_digit;  ///< written more often than called for than chance allows
  double liked_chance = 1.0;       ///< chance of that, or of the most striking digit
};

/// From the pictures alone; a last figure is judged among those that `to_cm3` allows (0 and 5, or all ten).
[[nodiscard]] ReadingDrill reading_figures(std::vector<PictureRead> pictures, double to_cm3);

/// Follows a replay of such a drill.
class ReadingWatch {
 public:
  /// Before a deed of which it is not known yet whether it is allowed.
  void before_change(const Session& session, const Change& change);
  /// Only of changes that were not refused.
  void after_change(const Session& session, const Change& change);
  /// When all is over.
  [[nodiscard]] ReadingDrill figures(const Session& session);

 private:
  void look(const Session& session, bool again);

  std::vector<PictureRead> pictures_;
};

/// More is no matter of bias but a slip: under the 0.31 cm3 from the lowest point to the upper edge (our own
/// choice).
inline constexpr double kSlip_cm3 = 0.25;
/// A trained reader's standard deviation, cm3, and the range over several classes: students read one of two
/// fixed burettes each to 0.01 with a card behind it (Gordus, J. Chem. Educ. 64 (1987) 376; volume and page
/// from memory). It is a spread between readers, so it holds their biases too.
inline constexpr double kTrainedSd_cm3 = 0.022, kTrainedLeast_cm3 = 0.017, kTrainedMost_cm3 = 0.027;
/// The same when figures are then written to a step: the step's own spread, step / sqrt(12), on top.
[[nodiscard]] double trained_sd_cm3(double to_cm3);

/// What a slip looks like, as half a sentence: "that is the scale read upwards"; empty when like nothing
/// known.
[[nodiscard]] std::string slip_looks_like(const PictureRead& picture);

}  // namespace halfdrop
