#include "game/level/text_catalogue.h"

#include <algorithm>
#include <filesystem>
#include <system_error>

#include <nlohmann/json.hpp>

#include "game/level/fields.h"
#include "game/level/nearest.h"

namespace halfdrop {
namespace {

constexpr std::size_t kMostBytes = std::size_t{1} << 20;
constexpr std::size_t kLongestText = 600;

bool fits_key(std::string_view text, bool dots) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [&](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || (dots && c == '.');
  });
}

std::string in_braces(const std::vector<std::string>& names) {
  std::string all;
  for (const std::string& name : names) all += (all.empty() ? "{" : ", {") + name + "}";
  return all.empty() ? "none" : all;
}

/// The placeholders of a text against those of the English one.
void check_placeholders(const std::string& text, const std::string& english, const std::string& place,
                        FaultList& faults) {
  const auto found = placeholders(text);
  if (!found) return faults.add(place, found.error());
  const auto wanted = placeholders(english);
  if (!wanted || *found == *wanted) return;
  std::string message =
      "expected the placeholders of the English text, " + in_braces(*wanted) + ", found " + in_braces(*found);
  const std::vector<std::string_view> known(wanted->begin(), wanted->end());
  for (const std::string& name : *found) {
    if (std::find(wanted->begin(), wanted->end(), name) == wanted->end())
      message += did_you_mean(name, known);
  }
  faults.add(place, message);
}

void read_texts(const Json& json, const TextCatalogue* like, TextCatalogue& into, FaultList& faults) {
  std::vector<std::string_view> known;
  if (like != nullptr) {
    for (const auto& [key, text] : like->texts) known.push_back(key);
  }
  for (const auto& [key, value] : json.items()) {
    const std::string place = pointer_to("", key);
    if (like != nullptr && !like->texts.contains(key)) {
      faults.add(place, "unknown key " + in_quotes(key) + did_you_mean(key, known));
      continue;
    }
    if (!fits_key(key, true)) faults.add(place, "expected a key of a-z, 0-9, _ and dots");
    if (!check_text(value, kLongestText, false, place, faults)) continue;
    into.texts[key] = value.get<std::string>();
    check_placeholders(into.texts[key], (like != nullptr ? *like : into).texts.at(key), place, faults);
  }
  for (const std::string_view key : known) {
    if (!json.contains(key)) faults.add(pointer_to("", key), "is missing: expected a text");
  }
}

std::string folder_of_texts(const std::string& folder) {
  return (std::filesystem::path(folder) / "assets" / "text").string();
}

std::string file_of(const std::string& folder, std::string_view language) {
  return folder_of_texts(folder) + "/" + std::string(language) + ".json";
}

}  // namespace

tl::expected<std::vector<std::string>, std::string> placeholders(std::string_view text) {
  std::vector<std::string> names;
  for (std::size_t at = text.find_first_of("{}"); at != std::string_view::npos;
       at = text.find_first_of("{}", at + 1)) {
    const std::size_t close = text.find('}', at);
    if (text[at] == '}' || close == std::string_view::npos)
      return tl::unexpected(std::string("expected {name}, found a brace by itself"));
    const std::string_view name = text.substr(at + 1, close - at - 1);
    if (!fits_key(name, false))
      return tl::unexpected("expected a placeholder's name of a-z, 0-9 and _, found " +
                            in_quotes(text.substr(at, close - at + 1)));
    names.emplace_back(name);
    at = close;
  }
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

Result<TextCatalogue> read_catalogue(const std::string& path, const TextCatalogue* like) {
  const tl::expected<std::string, Fault> text = read_file(path, kMostBytes);
  if (!text) return tl::unexpected(std::vector<Fault>{text.error()});
  FaultList faults(path);
  TextCatalogue catalogue;
  if (const std::optional<Json> json = parse_json(*text, {}, faults)) {
    const Fields fields(*json, "", faults);
    if (json->is_object()) read_texts(*json, like, catalogue, faults);
  }
  if (!faults.empty()) return tl::unexpected(faults.take());
  return catalogue;
}

Result<TextCatalogue> read_language(const std::string& folder, const std::string& language) {
  Result<TextCatalogue> english = read_catalogue(file_of(folder, kFirstLanguage), nullptr);
  if (!english || language == kFirstLanguage) return english;
  return read_catalogue(file_of(folder, language), &*english);
}

std::vector<std::string> languages(const std::string& folder) {
  std::vector<std::string> names;
  std::error_code none;
  for (const auto& file : std::filesystem::directory_iterator(folder_of_texts(folder), none)) {
    if (file.path().extension() == ".json") names.push_back(file.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

bool is_catalogue(const std::string& path) {
  return std::filesystem::absolute(path).parent_path().filename() == "text";
}

}  // namespace halfdrop
