#pragma once
// Words that are shown, by key: say("sheet.run"), say("marks.points", {{"points", "7"}, {"of", "8"}}). The
// words themselves stand in assets/text/<language>.json. What is in force is read-only, set at most once
// before a program shows anything, and English until then: nothing of it gets into a session or a state.

#include <initializer_list>
#include <string>
#include <string_view>

namespace halfdrop {

struct TextCatalogue;

/// The key of a text, written out in the source where it is used: tests/house reads it there. It turns into
/// words of the language in force when it is used, so that tables of phrases can be constants.
class Phrase {
 public:
  /// No words.
  constexpr Phrase() = default;
  // NOLINTNEXTLINE(google-explicit-constructor): a literal is the argument
  consteval Phrase(const char* key) : key_(key) {
    for (const char c : key_) {
      const bool fits = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '.';
      if (!fits) throw "a key is made of a-z, 0-9, _ and dots";
    }
  }

  /// Words that stand in no catalogue yet, the same in every language: tests/house counts them.
  [[nodiscard]] static constexpr Phrase not_yet(const char* words) {
    Phrase phrase;
    phrase.key_ = words;
    phrase.has_key_ = false;
    return phrase;
  }

  [[nodiscard]] constexpr std::string_view key() const { return key_; }
  [[nodiscard]] constexpr bool has_key() const { return has_key_; }
  [[nodiscard]] constexpr bool empty() const { return key_.empty(); }
  // NOLINTNEXTLINE(google-explicit-constructor): a phrase stands wherever its words do
  operator std::string_view() const;
  // NOLINTNEXTLINE(google-explicit-constructor)
  operator std::string() const;

 private:
  std::string_view key_;
  bool has_key_ = true;
};

/// What stands in a text's {name}.
struct Blank {
  std::string_view name;
  std::string value;
};

/// Its words in the language in force; the key itself where that language lacks it.
[[nodiscard]] const std::string& say(Phrase phrase);
[[nodiscard]] std::string say(Phrase phrase, std::initializer_list<Blank> blanks);

/// From now on words are this language's. The catalogue must stay where it is as long as words are used. Not
/// while another thread says something.
void speak(const TextCatalogue& catalogue);
/// Until then, and again after this: assets/text/en.json of the data folder. Without it no word can be said:
/// the program ends with its faults, status 3.
void speak_english();

}  // namespace halfdrop
