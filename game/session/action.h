#pragma once
// Names of deeds and cells as attempts and people write them, and the check of every action before it is
// applied.

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "game/session/attempt.h"

namespace halfdrop {

/// "lift out funnel" and so on, in words of the trade.
[[nodiscard]] std::string_view deed_name(Deed deed);
[[nodiscard]] std::optional<Deed> deed_from_name(std::string_view name);
/// Why not, as a sentence: "The flask is in the way: set it aside first."
[[nodiscard]] std::string_view refusal_text(Refusal refusal);

/// Runs of a level's sheet: "trial", "1", "2", ...; a drill has none.
[[nodiscard]] std::vector<std::string> run_names(const Level& level);
/// Rows of a run's readings, "/initial" and "/final"; where a flask has two endpoints "/first endpoint"
/// between.
[[nodiscard]] std::span<const std::string_view> reading_rows(const Level& level);
/// Rows of a run down to its titres, in the order of writing: also "/first titre" there.
[[nodiscard]] std::span<const std::string_view> titre_rows(const Level& level);
/// Every cell of the sheet: "trial/initial", "trial/final", "trial/titre", "1/initial", ..., "1/counts"
/// ("yes" or ""), "calculation/..." in order. In a drill "reading/1" and so on, or none.
[[nodiscard]] std::vector<std::string> sheet_cells(const Level& level);

/// A drill's cell for reading `number`, 1 to n: "reading/3".
[[nodiscard]] std::string reading_cell(int number);

/// Why a level has no place for a deed or a hand, by name: most deeds of a titration in a drill, and a
/// drill's own in an exercise. Nothing when it has.
[[nodiscard]] std::optional<std::string> not_in_level(const Level& level, Deed deed);
[[nodiscard]] std::optional<std::string> not_in_level(const Level& level, const HandsChange& change);

/// First thing wrong with a change of hands: the hand's name and its range. Nothing when all is in range.
[[nodiscard]] std::optional<std::string> check_hands(const HandsChange& change);
/// First thing wrong with a writing: text over 40 characters, unknown cell (a near one
/// is named), or anything but "yes" or nothing in a counts cell.
[[nodiscard]] std::optional<std::string> check_writing(const Level& level, const Writing& writing);

}  // namespace halfdrop
