#include "engine/drafting/list_text.hpp"

#include "engine/generator/write.hpp"

#include <algorithm>

namespace matula::drafting {

namespace {

/// A word of the list and where it stands, quotes included; `comma` is where its comma is, or npos.
struct Item {
  std::string word;
  std::size_t from = 0;
  std::size_t to = 0;
  std::size_t comma = std::string::npos;
};

std::size_t behind_remark(const std::string& list, std::size_t at) {
  const auto end = list.find('\n', at);
  return end == std::string::npos ? list.size() : end;
}

/// Keys hold no quotes and no backslashes, so the next quote of the same kind ends the word.
std::vector<Item> items_of(const std::string& list) {
  std::vector<Item> items;
  for (std::size_t at = 0; at < list.size(); ++at) {
    const char letter = list[at];
    if (letter == '#') {
      at = behind_remark(list, at);
    } else if (letter == '"' || letter == '\'') {
      const auto end = list.find(letter, at + 1);
      if (end == std::string::npos) {
        return items;
      }
      items.push_back({list.substr(at + 1, end - at - 1), at, end + 1});
      at = end;
    } else if (letter == ',' && !items.empty()) {
      items.back().comma = at;
    }
  }
  return items;
}

} // namespace

std::vector<std::string> words_of_list(const std::string& list) {
  std::vector<std::string> words;
  if (!list.empty() && list.front() == '[') {
    for (const Item& item : items_of(list)) {
      words.push_back(item.word);
    }
  }
  return words;
}

std::string with_word(const std::string& list, const std::string& word) {
  const auto items = items_of(list);
  const std::string written = generator::quoted(word);
  if (list.empty() || list.front() != '[') {
    return "[" + written + "]";
  }
  if (std::any_of(items.begin(), items.end(), [&](const Item& item) { return item.word == word; })) {
    return list;
  }
  std::string longer = list;
  if (items.empty()) {
    return longer.insert(1, written);
  }
  const Item& last = items.back();
  return last.comma == std::string::npos ? longer.insert(last.to, ", " + written)
                                         : longer.insert(last.comma + 1, " " + written + ",");
}

std::string without_word(const std::string& list, const std::string& word) {
  const auto items = items_of(list);
  const auto found =
      std::find_if(items.begin(), items.end(), [&](const Item& item) { return item.word == word; });
  if (found == items.end()) {
    return list;
  }
  std::string shorter = list;
  if (found->comma != std::string::npos) {
    // Its own comma and the blank behind it go too.
    std::size_t end = found->comma + 1;
    end += end < list.size() && list[end] == ' ' ? 1 : 0;
    shorter.erase(found->comma, end - found->comma);
    return shorter.erase(found->from, found->to - found->from);
  }
  shorter.erase(found->from, found->to - found->from);
  if (found != items.begin()) {
    const std::size_t comma = (found - 1)->comma;
    const bool blank = comma + 1 < shorter.size() && shorter[comma + 1] == ' ';
    shorter.erase(comma, blank ? 2 : 1);
  }
  return shorter;
}

} // namespace matula::drafting
