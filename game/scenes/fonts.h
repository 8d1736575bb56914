#pragma once
// The faces of the screen: Lato, and DejaVu Sans for what Lato lacks (arrows, ticks, equilibrium signs).

#include <SFML/Graphics/Font.hpp>
#include <array>
#include <map>
#include <memory>
#include <string>
#include <tl/expected.hpp>

namespace halfdrop {

enum class Face { regular, semibold, bold, italic };
inline constexpr std::size_t kFaces = 4;

class Fonts {
 public:
  /// Loads all faces; a missing one is named in a one-line message.
  [[nodiscard]] static tl::expected<Fonts, std::string> load();

  /// The font that has a character: the face itself or the fallback.
  [[nodiscard]] const sf::Font& font_for(Face face, sf::Uint32 character) const;
  [[nodiscard]] const sf::Font& font(Face face) const { return *faces_[static_cast<std::size_t>(face)]; }

 private:
  std::array<std::unique_ptr<sf::Font>, kFaces> faces_;
  std::unique_ptr<sf::Font> fallback_, fallback_bold_;
  mutable std::map<std::pair<Face, sf::Uint32>, bool> missing_;
};

}  // namespace halfdrop
