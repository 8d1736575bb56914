#pragma once
// An attempt marked: titres, breakdowns, four scores behind the safety gate, findings. Pure functions of a
// replay.

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "game/marking/delivery_drill.h"
#include "game/marking/filling_drill.h"
#include "game/marking/knowing_drill.h"
#include "game/marking/own_uncertainty.h"
#include "game/marking/reading_drill.h"
#include "game/marking/result_split.h"
#include "game/marking/titre_breakdown.h"
#include "game/session/replay.h"

namespace halfdrop {

enum class Score : std::uint8_t { safety, hand, eye, record, arithmetic };
[[nodiscard]] std::string_view score_name(Score score);
/// The same as it is shown.
[[nodiscard]] std::string_view score_words(Score score);

struct Finding {
  Score score = Score::hand;
  std::string criterion;  ///< stable id, e.g. "jet-filled"
  bool met = false;
  double points = 0.0, of = 0.0;   ///< of == 0 for safety, which is a gate
  std::string seen;                ///< what was seen, a sentence
  Tick tick = 0;                   ///< when
  std::optional<double> cost_cm3;  ///< what it cost, where that can be said
  std::string advice;              ///< what to do; empty when met
  bool judged = true;              ///< false: nothing was done that it could be judged by
};

/// One run of the results sheet.
struct TitreRow {
  std::string run;                               ///< "trial", "1", ...
  std::optional<double> initial_cm3, final_cm3;  ///< as written
  std::optional<double> recorded_cm3;            ///< final - initial
  std::optional<double> written_titre_cm3;
  bool used = false;                        ///< ticked by the player
  std::string initial_text, final_text;     ///< as they stand on the paper
  std::optional<TitreBreakdown> breakdown;  ///< when both readings were written
};

struct Marks {
  struct Part {
    double points = 0.0, of = 0.0;
  };
  bool safe = false;
  std::array<Part, 4> parts;     ///< hand, eye, record, arithmetic
  double total = 0.0, of = 0.0;  ///< total is 0 while safety is not met
};

/// What a drill measured.
using DrillFigures = std::variant<ReadingDrill, DeliveryDrill, FillingDrill, KnowingDrill>;

/// What occurred and is no fault, though it is often taken for one.
[[nodiscard]] bool is_harmless(const Finding& finding);

struct MarkedAttempt {
  std::string level_id, level_title, alias;
  Way way = Way::independent;
  ReplayOutcome outcome;
  std::vector<TitreRow> titres;
  std::optional<double> mean_titre_cm3;  ///< the player's
  double ideal_titre_cm3 = 0.0;
  std::optional<double> reported;
  std::string mean_text, reported_text;  ///< as they stand on the paper
  double true_value = 0.0;
  std::string unit;
  std::optional<OwnUncertainty>
      uncertainty;  ///< when a result was reported and titres count, or a mean was written
  std::optional<ResultSplit> result_split;  ///< when a result was reported and can be split
  Marks marks;
  std::vector<Finding> findings;
  std::optional<DrillFigures>
      drill;  ///< then there are no titres, and ideal titre and true value are not a number
};

[[nodiscard]] MarkedAttempt mark(const Attempt& attempt);

}  // namespace halfdrop
