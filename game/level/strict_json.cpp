#include "game/level/strict_json.h"

#include <algorithm>
#include <cassert>
#include <set>
#include <vector>

#include <nlohmann/json.hpp>

namespace halfdrop {
namespace {

/// Builds the value from the parser's events; the library's own builder would drop doubled keys silently.
class Builder {
 public:
  Builder(std::string_view text, const TextPlace& place, FaultList& faults)
      : text_(text), place_(place), faults_(faults) {}

  Json take() { return std::move(root_); }

  bool null() { return leaf(nullptr); }
  bool boolean(bool value) { return leaf(value); }
  bool number_integer(std::int64_t value) { return leaf(value); }
  bool number_unsigned(std::uint64_t value) { return leaf(value); }
  bool number_float(double value, const std::string&) { return leaf(value); }
  bool string(std::string& value) { return leaf(std::move(value)); }
  bool binary(Json::binary_t&) { return false; }
  bool start_object(std::size_t) { return open(Json::object()); }
  bool start_array(std::size_t) { return open(Json::array()); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(std::string& name) {
    Frame& frame = frames_.back();
    if (!frame.seen.insert(name).second)
      faults_.add(place_.pointer + pointer_to(pointer(frames_.size() - 1), name), "key stands twice");
    frame.key = std::move(name);
    return true;
  }
  bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& error) {
    faults_.add(FaultKind::cannot_parse, syntax_place(position), plain(error.what()));
    return false;
  }

 private:
  struct Frame {
    Json* container = nullptr;
    std::string key;
    std::set<std::string> seen;
  };

  Json* put(Json&& value) {
    if (frames_.empty()) {
      root_ = std::move(value);
      return &root_;
    }
    Json& container = *frames_.back().container;
    if (container.is_array()) return &container.emplace_back(std::move(value));
    auto& members = *container.get_ptr<Json::object_t*>();
    // Container::emplace_back, because ordered_map's own emplace searches all members first.
    return &members.emplace_back(frames_.back().key, std::move(value)).second;
  }
  template <class T>
  bool leaf(T&& value) {
    put(Json(std::forward<T>(value)));
    return true;
  }
  bool open(Json&& container) {
    if (frames_.size() >= kDeepestNesting) {
      faults_.add(FaultKind::cannot_parse, place_.pointer + pointer(frames_.size()),
                  "nested more than " + std::to_string(kDeepestNesting) + " deep");
      return false;
    }
    Json* const placed = put(std::move(container));
    frames_.push_back({placed, {}, {}});
    return true;
  }
  bool close() {
    frames_.pop_back();
    return true;
  }

  /// Pointer to what the first `depth` frames are filling now.
  [[nodiscard]] std::string pointer(std::size_t depth) const {
    std::string path;
    for (std::size_t i = 0; i < depth; ++i) {
      const Frame& frame = frames_[i];
      // Inside an open child the child is already the last element of its array.
      const bool child_open = i + 1 < frames_.size();
      path = frame.container->is_array() ? pointer_to(path, frame.container->size() - (child_open ? 1 : 0))
                                         : pointer_to(path, frame.key);
    }
    return path;
  }
  [[nodiscard]] std::string syntax_place(std::size_t position) const {
    if (!place_.syntax.empty()) return place_.syntax;
    const std::string_view before = text_.substr(0, std::min(position, text_.size()));
    return "line " + std::to_string(1 + std::count(before.begin(), before.end(), '\n'));
  }
  /// Without the library's name and its own count of lines.
  static std::string plain(const std::string& what) {
    const std::size_t after_id = what.find("] ");
    std::string message = after_id == std::string::npos ? what : what.substr(after_id + 2);
    if (message.starts_with("parse error at line ")) {
      const std::size_t column = message.find(", ");
      if (column != std::string::npos) message.erase(0, column + 2);
    }
    return "not JSON: " + message;
  }

  std::string_view text_;
  const TextPlace& place_;
  FaultList& faults_;
  Json root_;
  std::vector<Frame> frames_;
};

}  // namespace

std::optional<Json> parse_json(std::string_view text, const TextPlace& place, FaultList& faults) {
  Builder builder(text, place, faults);
  if (!Json::sax_parse(text.begin(), text.end(), &builder)) return std::nullopt;
  return builder.take();
}

std::string json_text(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

std::string valid_utf8(const std::string& text) {
  FaultList none("");
  const std::optional<Json> again = parse_json(json_text(Json(text)), {}, none);
  assert(again);
  return again->get<std::string>();
}

std::string pointer_to(const std::string& pointer, std::string_view key) {
  std::string path = pointer + "/";
  for (const char c : key) {
    if (c == '~')
      path += "~0";
    else if (c == '/')
      path += "~1";
    else
      path += c;
  }
  return path;
}

std::string pointer_to(const std::string& pointer, std::size_t index) {
  return pointer + "/" + std::to_string(index);
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t kMostBytes = 60;
  const auto continues = [&](std::size_t at) {
    return (static_cast<unsigned char>(text[at]) & 0xc0) == 0x80;
  };
  std::size_t end = text.size();
  if (end > kMostBytes) {
    end = kMostBytes;
    while (end > 0 && continues(end)) --end;
  }
  std::string words = "\"";
  words += text.substr(0, end);
  words += end < text.size() ? "...\"" : "\"";
  return words;
}

}  // namespace halfdrop
