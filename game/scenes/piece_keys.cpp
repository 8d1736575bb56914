#include "game/scenes/piece_keys.h"

#include "game/scenes/play_scene.h"

namespace halfdrop {

std::optional<Piece> piece_of_key(const sf::Event::KeyEvent& key) {
  using Key = sf::Keyboard;
  switch (key.code) {
    case Key::Left:
    case Key::Right:
    case Key::S:
    case Key::D:
      return Piece::tap;
    case Key::J:
    case Key::O:
      return Piece::jet;
    case Key::Home:
      return Piece::clamp;
    case Key::Up:
    case Key::Down:
      return key.control ? std::optional(Piece::clamp) : std::nullopt;
    case Key::N:
      return Piece::funnel;
    case Key::A:
    case Key::Y:
      return Piece::pipette;
    case Key::U:
    case Key::Z:
      return Piece::filler;
    case Key::F:
    case Key::Space:
      return Piece::flask;
    case Key::L:
      return Piece::tile;
    case Key::W:
      return Piece::wash_bottle;
    case Key::B:
      return Piece::beaker;
    case Key::E:
      return Piece::burette;
    default:
      return std::nullopt;
  }
}

bool PlayScene::asks_for_piece() const { return outfit_.pieces && apparatus_round(session_).to_pick(); }

/// The answer where a piece is asked for; false where none is, and the piece may be taken hold of.
bool PlayScene::answer(std::optional<Piece> piece) {
  if (!piece || !asks_for_piece()) return false;
  const auto number = static_cast<int>(apparatus_round(session_).now) + 1;
  if (const auto refused = session_.write({piece_cell(number), std::string(piece_name(*piece))}))
    tell(*refused);
  look();
  return true;
}

}  // namespace halfdrop
