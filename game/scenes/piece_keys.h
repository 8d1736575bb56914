#pragma once
// Which piece of apparatus a key belongs to, in the drill that asks for them.

#include <SFML/Window/Event.hpp>
#include <optional>

#include "game/session/apparatus.h"

namespace halfdrop {

[[nodiscard]] std::optional<Piece> piece_of_key(const sf::Event::KeyEvent& key);

}  // namespace halfdrop
