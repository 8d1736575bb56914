#include "game/records/drill_text.h"

#include <algorithm>

#include "game/marking/wording.h"
#include "game/records/text_layout.h"

namespace halfdrop {

namespace {

constexpr std::size_t kTitle = 34, kFigure = 22;

std::string line(const std::string& title, const std::string& figure, const std::string& beside = "") {
  std::string out = "  " + left(title, kTitle) + right(figure, kFigure);
  return out + (beside.empty() ? "" : "  " + beside) + "\n";
}

/// What stands beside a figure of a reader's own.
std::string beside(const DrillFigure& figure, const ReadingDrill& drill) {
  if (figure.id == "bias_cm3") return "mean of written minus true, ± its standard error";
  if (figure.id == "sd_cm3") {
    std::string trained = "a trained reader's: " + figure_text(kTrainedSd_cm3, 3);
    if (drill.to_cm3 > 0.01)
      trained += ", written to " + figure_text(drill.to_cm3, 2) + ": " +
                 figure_text(trained_sd_cm3(drill.to_cm3), 3);
    return trained;
  }
  if (figure.id == "off_level" && drill.off_level > 0)
    return figure_text(drill.off_level_cost_cm3, 3) + " cm³ each on average";
  return {};
}

std::string digit_lines(const ReadingDrill& drill) {
  std::string figures, written, called_for;
  for (std::size_t i = 0; i < drill.digits.size(); ++i) {
    const DigitCount& count = drill.digits[i];
    if (drill.to_cm3 > 0.01 && i % 5 != 0 && count.written == 0) continue;
    figures += right(std::to_string(i), 4);
    written += right(std::to_string(count.written), 4);
    called_for += right(std::to_string(count.called_for), 4);
  }
  return "  " + left("last figure", kTitle) + figures + "\n  " + left("  written", kTitle) + written +
         "\n  " + left("  called for by the true readings", kTitle) + called_for + "\n";
}

std::string lines_of(const ReadingDrill& drill) {
  std::string out = "\nWhat your eye does\n";
  for (const DrillFigure& figure : key_figures(drill))
    out += line(figure.title, figure_words(figure), beside(figure, drill));
  return out + digit_lines(drill);
}

std::string lines_of(const DeliveryDrill& drill) {
  std::string out = "\nWhat the beaker got (cm³)\n  " + left("asked", kTitle) + right("asked", 10) +
                    right("delivered", 11) + right("off", 9) + "\n";
  for (const VolumeDelivered& volume : drill.volumes) {
    const auto off = volume.error_cm3();
    const std::string signed_off = off ? signed_cm3_text(*off, 3) : "-";
    out += "  " + left(asked_text(volume.asked), kTitle) + right(figure_text(volume.asked_cm3, 3), 10) +
           right(volume.delivered_cm3 ? figure_text(*volume.delivered_cm3, 3) : "-", 11) +
           right(signed_off.substr(0, signed_off.find(' ')), 9) + "\n";
  }
  return out;
}

std::string lines_of(const FillingDrill& drill) {
  std::string out =
      drill.looked ? "\nThe burette at its first reading\n" : "\nNo first reading was written\n";
  for (const DrillFigure& figure : key_figures(drill)) out += line(figure.title, figure_words(figure));
  return out;
}

std::string lines_of(const KnowingDrill& drill) {
  std::string out = "\nThe pieces, in the order asked\n";
  for (const PieceAsked& asked : drill.pieces) {
    const std::string use = use_words(asked);
    out += wrapped("  " + left(std::string(piece_name(asked.piece)), 18),
                   found_words(asked) + (use.empty() ? "" : ", " + use));
  }
  for (const DrillFigure& figure : key_figures(drill)) out += line(figure.title, figure_words(figure));
  return out;
}

std::string comparison(const FirstGo& first_go) {
  std::string out = "\n" + wrapped("", "Against the first go, " + first_go.attempt_name);
  for (const FigureChange& change : first_go.changes) {
    const std::string then_now = figure_words(change.first) + " → " + figure_words(change.second);
    out += wrapped("  " + left(change.first.title, kTitle),
                   then_now + (change.verdict.empty() ? "" : " (" + change.verdict + ")"));
  }
  return out;
}

}  // namespace

std::string drill_text(const DrillFigures& drill, const std::optional<FirstGo>& first_go) {
  const std::string out = std::visit([](const auto& one) { return lines_of(one); }, drill);
  return first_go ? out + comparison(*first_go) : out;
}

}  // namespace halfdrop
