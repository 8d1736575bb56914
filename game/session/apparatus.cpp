#include "game/session/apparatus.h"

#include <algorithm>
#include <array>
#include <span>

#include "physics/bench/bench.h"
#include "physics/bench/clamp.h"
#include "physics/random.h"

namespace halfdrop {

namespace {

struct About {
  std::string_view name;
  Phrase label, purpose, use;
};

constexpr std::array<About, kPieces> kAbout = {
    {{"burette", "piece.burette", "piece.burette.purpose", {}},
     {"tap", "piece.tap", "piece.tap.purpose", "piece.tap.use"},
     {"jet", "piece.jet", "piece.jet.purpose", "piece.jet.use"},
     {"clamp", "piece.clamp", "piece.clamp.purpose", "piece.clamp.use"},
     {"funnel", "piece.funnel", "piece.funnel.purpose", "piece.funnel.use"},
     {"pipette", "piece.pipette", "piece.pipette.purpose", {}},
     {"filler", "piece.filler", "piece.filler.purpose", {}},
     {"conical flask", "piece.flask", "piece.flask.purpose", "piece.flask.use"},
     {"white tile", "piece.tile", "piece.tile.purpose", "piece.tile.use"},
     {"wash bottle", "piece.wash_bottle", "piece.wash_bottle.purpose", "piece.wash_bottle.use"},
     {"waste beaker", "piece.beaker", "piece.beaker.purpose", "piece.beaker.use"}}};

const About& about(Piece piece) { return kAbout[static_cast<std::size_t>(piece)]; }

/// The bench as the attempt's lines leave it.
struct Stands {
  const BenchSpec& spec;
  BenchState bench;
  bool flicked = false;  ///< since the piece was found

  void see(const HandsChange& change) { change.apply_to(bench.hands); }
  void see(Deed deed) {
    flicked = flicked || deed == Deed::flick_jet;
    if (deed == Deed::put_in_funnel || deed == Deed::lift_out_funnel)
      bench.funnel_in = deed == Deed::put_in_funnel;
    if (deed == Deed::put_beaker_under || deed == Deed::take_beaker_away)
      bench.beaker_under = deed == Deed::put_beaker_under;
    if (deed == Deed::lay_tile || deed == Deed::take_tile_away) bench.tile_laid = deed == Deed::lay_tile;
    if (deed == Deed::swing_over_edge || deed == Deed::swing_back)
      bench.over_edge = deed == Deed::swing_over_edge;
  }
};

using Is = bool (*)(const Stands&);

constexpr double kOpen = 0.9, kShut = 0.01, kBackUp_mm = 10.0;

constexpr std::array<Is, 2> kTapUse = {[](const Stands& s) { return s.bench.hands.tap >= kOpen; },
                                       [](const Stands& s) { return s.bench.hands.tap <= kShut; }};
constexpr std::array<Is, 1> kJetUse = {[](const Stands& s) { return s.flicked; }};
constexpr std::array<Is, 2> kClampUse = {
    [](const Stands& s) { return s.bench.over_edge && top_below_eye(s.spec, s.bench.hands); },
    [](const Stands& s) { return !s.bench.over_edge && s.bench.hands.clamp_mm >= -kBackUp_mm; }};
constexpr std::array<Is, 2> kFunnelUse = {[](const Stands& s) { return s.bench.funnel_in; },
                                          [](const Stands& s) { return !s.bench.funnel_in; }};
constexpr std::array<Is, 1> kFlaskUse = {[](const Stands& s) { return flask_under_jet(s.spec, s.bench); }};
constexpr std::array<Is, 1> kTileUse = {[](const Stands& s) { return s.bench.tile_laid; }};
constexpr std::array<Is, 1> kWashUse = {[](const Stands& s) { return s.bench.hands.wash > 0.0; }};
constexpr std::array<Is, 1> kBeakerUse = {[](const Stands& s) { return s.bench.beaker_under; }};

/// What must be seen one after the other.
std::span<const Is> use_of(Piece piece) {
  switch (piece) {
    case Piece::tap:
      return kTapUse;
    case Piece::jet:
      return kJetUse;
    case Piece::clamp:
      return kClampUse;
    case Piece::funnel:
      return kFunnelUse;
    case Piece::flask:
      return kFlaskUse;
    case Piece::tile:
      return kTileUse;
    case Piece::wash_bottle:
      return kWashUse;
    case Piece::beaker:
      return kBeakerUse;
    case Piece::burette:
    case Piece::pipette:
    case Piece::filler:
      break;
  }
  return {};
}

/// Follows the attempt's lines, one after the other.
class Follower {
 public:
  explicit Follower(const Session& session) : stands_{session.spec(), lay_out(session.spec())} {
    for (const Piece piece : pieces_asked(session.attempt().seed)) {
      round_.asked.emplace_back();
      round_.asked.back().piece = piece;
    }
  }

  void see(const Change& change) {
    std::visit([&](const auto& what) { take(change.tick, what); }, change.what);
  }
  [[nodiscard]] const ApparatusRound& round() const { return round_; }

 private:
  void take(Tick, const Ending&) {}
  void take(Tick tick, const HandsChange& change) {
    stands_.see(change);
    look(tick);
  }
  void take(Tick tick, Deed deed) {
    stands_.see(deed);
    look(tick);
  }
  void take(Tick tick, const Writing& writing) {
    if (round_.over() || writing.cell != piece_cell(static_cast<int>(round_.now) + 1)) return;
    PieceAsked& asked = round_.asked[round_.now];
    const auto answer = piece_from_name(writing.text);
    const bool gives_up = writing.text == kDoNotKnow;
    if (asked.picked) {
      if (gives_up) go_on();
      return;
    }
    if (!answer && !gives_up) return;
    asked.tick = tick;
    asked.told = asked.told || gives_up;
    asked.picked = answer == asked.piece;
    if (answer && !asked.picked) asked.wrong.push_back(*answer);
    if (!asked.picked) return;
    stands_.flicked = false;
    seen_ = 0;
    if (use_of(asked.piece).empty()) return go_on();
    look(tick);
  }
  void look(Tick tick) {
    if (round_.over() || !round_.piece().picked) return;
    PieceAsked& asked = round_.asked[round_.now];
    const std::span<const Is> use = use_of(asked.piece);
    while (seen_ < use.size() && use[seen_](stands_)) ++seen_;
    if (seen_ < use.size()) return;
    asked.used = true;
    asked.tick = tick;
    go_on();
  }
  void go_on() {
    round_.asked[round_.now].over = true;
    ++round_.now;
  }

  Stands stands_;
  ApparatusRound round_;
  std::size_t seen_ = 0;  ///< of the present piece's use
};

}  // namespace

std::string_view piece_name(Piece piece) { return about(piece).name; }

Phrase piece_label(Piece piece) { return about(piece).label; }

std::optional<Piece> piece_from_name(std::string_view name) {
  for (std::size_t i = 0; i < kPieces; ++i) {
    if (kAbout[i].name == name) return static_cast<Piece>(i);
  }
  return std::nullopt;
}

Phrase piece_purpose(Piece piece) { return about(piece).purpose; }

Phrase piece_use(Piece piece) { return about(piece).use; }

std::string piece_cell(int number) { return "piece/" + std::to_string(number); }

std::vector<Piece> pieces_asked(std::uint64_t seed) {
  Random random = Random::stream(seed, 0, Purpose::drill);
  std::vector<Piece> pieces;
  for (std::size_t i = 0; i < kPieces; ++i) pieces.push_back(static_cast<Piece>(i));
  for (std::size_t i = kPieces - 1; i > 0; --i)  // Fisher and Yates
    std::swap(pieces[i], pieces[static_cast<std::size_t>(random.uniform() * static_cast<double>(i + 1))]);
  return pieces;
}

ApparatusRound apparatus_round(const Session& session) {
  Follower follower(session);
  for (const Change& change : session.attempt().changes) follower.see(change);
  return follower.round();
}

}  // namespace halfdrop
