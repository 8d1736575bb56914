#pragma once
// Finds, for every run of the sheet, when its two readings were taken and which liquid in the flask is its
// own.
//
// People write, strike out, write again, and use the wrong column. So nothing is decided at the writing: each
// writing into a reading's cell is a *look* at the bench (what the eye sees then, the books, the flask),
// whatever the text. When the attempt is over, the figure that stands in a cell is given to one of that
// cell's looks:
//
//   what was done                                                       the reading was taken
//   written once, well or badly                                         then
//   struck out and not written again                                    never; the run has no such reading
//   struck out, or no number at first, then written again elsewhere     at the look the figure fits
//   put right on paper when the meniscus stands elsewhere               at the look the figure fits
//   written too soon, a drop more let in, written again                 at the second look, if it fits better
//   nothing ran between two looks                                       initial: the later; final: the
//   earlier the final reading written after its flask was poured away           just before that, with the
//   flask still full the same, and the meniscus no longer stands there                   then too, with the
//   eye as it was then written in another run's column too, or before                      at the look that
//   makes the better pair
//
// Which pair is better: figures within kMayBeRead_cm3 of what was seen; then initial before final; then no
// titrated flask poured away between; then the nearer figures; then the shorter time.
//
// A run's own liquid begins where the flask was last emptied, or at another run's final reading from the same
// flask if an aliquot, indicator or titrant went in after that. No writing by itself begins or ends anything.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "game/marking/flask_watch.h"
#include "game/marking/titre_breakdown.h"
#include "game/marking/written_number.h"
#include "game/session/session.h"

namespace halfdrop {

/// What was read: both moments of a run, and what the books say its flask got and lost.
struct RunReadings {
  std::optional<ReadingMoment> initial, final;
  std::optional<ReadingMoment> first_end;  ///< at the first of two endpoints, from the same flask
  FlaskStory story, first_story;           ///< up to the final reading, and to that
  [[nodiscard]] bool complete() const { return initial && final; }
};

/// What was done: the flask up to a run's final reading.
struct RunEvidence {
  std::optional<FlaskUse> flask;            ///< nothing without a final reading
  std::optional<FlaskUse> first_flask;      ///< the same at the first of two endpoints
  double entered_before_initial_cm3 = 0.0;  ///< titrant already in this run's flask at the initial reading
  bool poured_away_before_final = false;  ///< the final reading was written after that flask had been emptied
};

/// Both, by run name; only runs of which a reading stands on the sheet.
struct RunsRead {
  std::map<std::string, RunReadings> readings;
  std::map<std::string, RunEvidence> evidence;
};

/// A figure further than this from what was seen is no reading of it while a nearer one can be had.
inline constexpr double kMayBeRead_cm3 = 0.5;

/// Fed with every tick and every change of a replay, in order.
class ReadingMoments {
 public:
  void after_tick(const Session& session) { flask_.after_tick(session); }
  void before_change(const Session& session, const Change& change);
  /// Only of changes that were not refused.
  void after_change(const Session& session, const Change& change);

  /// As the sheet stands now.
  [[nodiscard]] RunsRead runs() const;

 private:
  /// The bench and the flask at a writing, or just before the flask was poured away.
  struct Look {
    ReadingMoment moment;
    FlaskLook flask;
    bool poured_away = false;
  };
  struct Cell {
    std::string text;  ///< what stands there
    std::vector<Look> looks;
  };
  struct Taken {
    const Look* initial = nullptr;
    const Look* final = nullptr;
  };
  struct Fit;
  /// Where a run's own liquid begins.
  struct Begin {
    Ledger books;
    FlaskUse use;            ///< of the flask by then
    bool unemptied = false;  ///< the liquid of another run is in it
  };

  void written(const Session& session, const Writing& writing);
  void look_at_poured_away(const Session& session, Cell& cell) const;
  [[nodiscard]] Taken taken(const std::string& run) const;
  [[nodiscard]] const Look* first_end_of(const std::string& run, const Taken& own) const;
  [[nodiscard]] Fit fit(const std::optional<double>& initial_cm3, const std::optional<double>& final_cm3,
                        const Taken& pair) const;
  using AllTaken = std::map<std::string, Taken>;
  [[nodiscard]] static Begin begin_of(const std::string& run, const AllTaken& all);
  [[nodiscard]] std::optional<ReadingMoment> moment(const Look* look, const std::string& cell) const;

  void add_first_end(const std::string& run, const Taken& own, const Begin& begin, RunsRead& runs) const;

  FlaskWatch flask_;
  std::map<std::string, Cell> cells_;  ///< "1/initial" and so on
};

}  // namespace halfdrop
