#include "game/demonstrator/knowing.h"

namespace halfdrop {

namespace {

constexpr double kThinks_s = 2.0, kTurns_s = 1.0, kRaises_s = 2.0;
constexpr double kLowered_mm = -290.0;

class PieceHands {
 public:
  PieceHands(AtBench& bench, const Habits& habits) : bench_(bench), moves_(bench, habits) {}

  void put_to_use(Piece piece) {
    switch (piece) {
      case Piece::tap:
        return turn_tap();
      case Piece::jet:
        return bench_.act(Deed::flick_jet);
      case Piece::clamp:
        return lower();
      case Piece::funnel:
        bench_.act(Deed::put_in_funnel);
        return bench_.act(Deed::lift_out_funnel);
      case Piece::flask:
        if (bench_.look().beaker_under) bench_.act(Deed::take_beaker_away);
        return moves_.flask_under();
      case Piece::tile:
        return bench_.act(Deed::lay_tile);
      case Piece::wash_bottle:
        bench_.hold(&HandsChange::wash, 0.5);
        bench_.wait(0.5);
        return bench_.hold(&HandsChange::wash, 0.0);
      case Piece::beaker:
        if (bench_.look().flask_under_jet) moves_.flask_aside();
        return bench_.act(Deed::put_beaker_under);
      case Piece::burette:
      case Piece::pipette:
      case Piece::filler:
        return;
    }
  }

 private:
  void turn_tap() {
    bench_.hold(&HandsChange::tap, 1.0);
    bench_.wait(kTurns_s);
    moves_.shut_tap();
    bench_.wait(kTurns_s);
  }
  /// Free of the flask first, into which the jet reaches.
  void lower() {
    if (bench_.look().flask_under_jet) moves_.flask_aside();
    bench_.act(Deed::swing_over_edge);
    bench_.hold(&HandsChange::clamp_mm, kLowered_mm);
    bench_.wait(kRaises_s);
    bench_.hold(&HandsChange::clamp_mm, 0.0);
    bench_.wait(kRaises_s);
    bench_.act(Deed::swing_back);
  }

  AtBench& bench_;
  Moves moves_;
};

}  // namespace

void know_pieces(AtBench& bench, const Habits& habits) {
  PieceHands hands(bench, habits);
  for (int number = 1; number <= static_cast<int>(kPieces) && !bench.gave_up(); ++number) {
    const Piece piece = bench.pieces().piece().piece;
    bench.wait(kThinks_s);
    bench.write(piece_cell(number), std::string(piece_name(piece)));
    hands.put_to_use(piece);
    if (bench.pieces().now != static_cast<std::size_t>(number))
      bench.give_up("the " + std::string(piece_name(piece)) + " was not put to its use");
  }
}

}  // namespace halfdrop
