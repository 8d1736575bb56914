#pragma once
// The drill "know your apparatus": pieces are asked for by what they are there for, in an order drawn by
// seed; the player names each by pointing at it, then puts it to that use. An answer is written into the
// piece's own cell ("piece/3"), so that an attempt holds every answer, the wrong ones too. All of this
// follows from the attempt's lines alone.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "game/level/say.h"
#include "game/session/session.h"

namespace halfdrop {

enum class Piece : std::uint8_t {
  burette,
  tap,
  jet,
  clamp,
  funnel,
  pipette,
  filler,
  flask,
  tile,
  wash_bottle,
  beaker
};
inline constexpr std::size_t kPieces = 11;

/// As answers have it: "wash bottle".
[[nodiscard]] std::string_view piece_name(Piece piece);
[[nodiscard]] std::optional<Piece> piece_from_name(std::string_view name);
/// As it is shown.
[[nodiscard]] Phrase piece_label(Piece piece);
/// Goes on after "to": "pour a liquid into the burette's narrow top".
[[nodiscard]] Phrase piece_purpose(Piece piece);
/// What is to be done with it once it was found, a sentence; empty where this bench has no deed for it.
[[nodiscard]] Phrase piece_use(Piece piece);
/// The cell of the piece that is asked for as number 1, 2 ... kPieces.
[[nodiscard]] std::string piece_cell(int number);
/// Written instead of an answer: tells which it is, or leaves its use out.
inline constexpr std::string_view kDoNotKnow = "?";

struct PieceAsked {
  Piece piece = Piece::burette;
  std::vector<Piece> wrong;  ///< answers before the right one
  bool told = false;         ///< "?" was written instead of an answer
  bool picked = false;       ///< found in the end
  bool used = false;         ///< put to its use; stays false where it has none
  bool over = false;         ///< the next is asked for
  Tick tick = 0;             ///< of the last answer, or of its use

  [[nodiscard]] bool first_try() const { return picked && wrong.empty() && !told; }
};

struct ApparatusRound {
  std::vector<PieceAsked> asked;  ///< all of them, in their order
  std::size_t now = 0;            ///< asked for, or being put to use

  [[nodiscard]] bool over() const { return now >= asked.size(); }
  /// Precondition: not over.
  [[nodiscard]] const PieceAsked& piece() const { return asked[now]; }
  [[nodiscard]] bool to_pick() const { return !over() && !piece().picked; }
};

[[nodiscard]] std::vector<Piece> pieces_asked(std::uint64_t seed);
/// As it stands now. Precondition: a session of that drill.
[[nodiscard]] ApparatusRound apparatus_round(const Session& session);

}  // namespace halfdrop
