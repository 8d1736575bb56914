#include "game/scenes/fonts.h"

#include <filesystem>

#include "game/level/level.h"

namespace halfdrop {

namespace {

constexpr unsigned kProbeSize = 32;
constexpr sf::Uint32 kSurelyMissing = 0xFFFFE;  // a noncharacter

std::string find_font(const std::string& name) {
  const std::string places[] = {data_folder() + "/assets/fonts/", "/usr/share/fonts/truetype/lato/",
                                "/usr/share/fonts/truetype/dejavu/"};
  for (const std::string& place : places) {
    if (std::filesystem::exists(place + name)) return place + name;
  }
  return {};
}

tl::expected<std::unique_ptr<sf::Font>, std::string> load_font(const std::string& name) {
  const std::string path = find_font(name);
  auto font = std::make_unique<sf::Font>();
  if (path.empty() || !font->loadFromFile(path)) {
    return tl::unexpected("Font " + name +
                          " not found in assets/fonts or /usr/share/fonts/truetype (Debian: fonts-lato, "
                          "fonts-dejavu-core).");
  }
  return font;
}

}  // namespace

tl::expected<Fonts, std::string> Fonts::load() {
  static constexpr const char* names[kFaces] = {"Lato-Regular.ttf", "Lato-Semibold.ttf", "Lato-Bold.ttf",
                                                "Lato-Italic.ttf"};
  Fonts fonts;
  for (std::size_t i = 0; i < kFaces; ++i) {
    auto font = load_font(names[i]);
    if (!font) return tl::unexpected(font.error());
    fonts.faces_[i] = std::move(*font);
  }
  auto plain = load_font("DejaVuSans.ttf");
  if (!plain) return tl::unexpected(plain.error());
  fonts.fallback_ = std::move(*plain);
  auto bold = load_font("DejaVuSans-Bold.ttf");
  if (!bold) return tl::unexpected(bold.error());
  fonts.fallback_bold_ = std::move(*bold);
  return fonts;
}

const sf::Font& Fonts::font_for(Face face, sf::Uint32 character) const {
  const sf::Font& own = font(face);
  if (character < 0x180) return own;
  const auto [found, is_new] = missing_.try_emplace({face, character}, false);
  if (is_new) {
    // SFML does not say that a glyph is missing: it then looks like the one of a character that no font has.
    const sf::Glyph& glyph = own.getGlyph(character, kProbeSize, false);
    const sf::Glyph& none = own.getGlyph(kSurelyMissing, kProbeSize, false);
    found->second = glyph.advance == none.advance && glyph.bounds == none.bounds;
  }
  if (!found->second) return own;
  return face == Face::regular || face == Face::italic ? *fallback_ : *fallback_bold_;
}

}  // namespace halfdrop
