// "Make it look like this": what is wished, what was found, and whether it is taken.
#include "engine/window/author_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

using drafting::Studio;

constexpr const char* as_it_falls = "as it falls";

float label_width() {
  return std::min(ImGui::GetFontSize() * 13, ImGui::GetWindowContentRegionMax().x * 0.5F);
}

void label(const std::string& words) {
  const float left = ImGui::GetCursorPosX();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(words.c_str());
  if (ImGui::GetItemRectSize().x > label_width() - ImGui::GetFontSize() / 2) {
    ImGui::SetCursorPosX(left + label_width());
  } else {
    ImGui::SameLine(left + label_width());
  }
}

/// One of the words, or nothing; `chosen` counts from the words' own first as 1.
void draw_wish(App& app, const std::string& name, const std::string& title,
               const std::vector<std::string>& words, int& chosen) {
  label(title);
  std::vector<std::string> options{as_it_falls};
  options.insert(options.end(), words.begin(), words.end());
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 9);
  (void)app.widgets.pick(name.c_str(), "##wish", options, chosen);
}

/// With what a test may be made: the usual, or any dissolved substance by its key.
std::vector<std::string> makers(const Studio& studio) {
  const std::string dissolved = "dissolved.";
  std::vector<std::string> keys{"the usual"};
  for (const auto& one : studio.substances()) {
    if (one.path.rfind(dissolved, 0) == 0) {
      keys.push_back(one.path.substr(dissolved.size()));
    }
  }
  return keys;
}

/// Once a word is wished of a test: what makes it.
void draw_maker(App& app, const std::string& test) {
  AuthorWish& wish = app.author->wish;
  if (wish.words[test] == 0) {
    return;
  }
  flow(ImGui::GetFontSize() * 9);
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 8);
  (void)app.widgets.pick(("wish.by." + test).c_str(), "##by", makers(*app.author->studio), wish.by[test]);
  if (ImGui::IsItemFocused() || ImGui::IsItemHovered()) {
    app.author->hint = "What makes it: the usual substance, or another, such as lactose instead of glucose.";
  }
}

/// So much of a substance, whatever it shows.
void draw_amounts(App& app) {
  AuthorView& view = *app.author;
  const auto all = view.studio->substances();
  std::vector<std::string> labels;
  for (const auto& one : all) {
    labels.push_back(one.label);
  }
  auto& amounts = view.wish.amounts;
  for (std::size_t i = 0; i < amounts.size(); ++i) {
    const std::string path = amounts[i].first;
    const auto known =
        std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.path == path; });
    label(known == all.end() ? path : known->label);
    (void)app.widgets.line(("wish.amount." + path).c_str(), amounts[i].second, ImGui::GetFontSize() * 8);
    flow(width_of("remove"));
    if (app.widgets.button(("wish.amount.remove." + path).c_str(), "remove")) {
      amounts.erase(amounts.begin() + static_cast<std::ptrdiff_t>(i));
      break;
    }
  }
  label("So much of");
  int chosen = -1;
  ImGui::SetNextItemWidth(std::min(ImGui::GetFontSize() * 11, ImGui::GetContentRegionAvail().x));
  if (app.widgets.pick("wish.amount", "##amount", labels, chosen)) {
    const std::string path = all[static_cast<std::size_t>(chosen)].path;
    const bool there =
        std::any_of(amounts.begin(), amounts.end(), [&](const auto& one) { return one.first == path; });
    if (!there) {
      amounts.emplace_back(path, view.studio->amount_to_wish(path));
    }
  }
}

std::vector<std::string> wishes_of(const AuthorView& view) {
  std::vector<std::string> wishes;
  const auto say = [&](const std::string& name, const std::vector<std::string>& words, int chosen) {
    if (chosen > 0 && chosen <= static_cast<int>(words.size())) {
      wishes.push_back(name + "=" + words[static_cast<std::size_t>(chosen) - 1]);
    }
  };
  for (const auto& offer : view.studio->wish_offers()) {
    const auto found = view.wish.words.find(offer.test);
    say(offer.test, offer.words, found == view.wish.words.end() ? 0 : found->second);
    const auto by = view.wish.by.find(offer.test);
    if (by != view.wish.by.end() && by->second > 0 && !wishes.empty() &&
        wishes.back().rfind(offer.test + "=", 0) == 0) {
      wishes.back() += " by " + makers(*view.studio)[static_cast<std::size_t>(by->second)];
    }
  }
  say("colour", view.studio->colours(), view.wish.colour);
  say("clarity", view.studio->clarities(), view.wish.clarity);
  for (const auto& [path, amount] : view.wish.amounts) {
    wishes.push_back(path + "=" + amount);
  }
  if (!view.wish.gravity.empty()) {
    wishes.push_back("sg=" + view.wish.gravity);
  }
  if (!view.wish.ph.empty()) {
    wishes.push_back("ph=" + view.wish.ph);
  }
  return wishes;
}

void draw_proposal(App& app, const drafting::Proposal& proposal) {
  AuthorView& view = *app.author;
  heading("Found: nothing is changed until you take it");
  if (app.widgets.button("wish.take", "Take it")) {
    view.focus_page = 3;
    view.wanted = [](Studio& studio) { return studio.take(); };
  }
  ImGui::SameLine();
  if (app.widgets.button("wish.leave", "Leave it")) {
    view.focus_page = 3;
    view.wanted = [](Studio& studio) {
      studio.leave();
      return std::string();
    };
  }
  ImGui::TextUnformatted("It then shows:");
  for (const auto& words : proposal.shows) {
    point(words);
  }
  for (const auto& words : proposal.warnings) {
    point("But: " + words);
  }
  ImGui::TextUnformatted(proposal.lines.empty() ? "Nothing has to be changed." : "What changes:");
  for (const auto& line : proposal.lines) {
    point(fmt::format("{}: {} → {}", line.label, line.from.empty() ? "none" : line.from,
                      line.to.empty() ? "none" : line.to));
  }
}

} // namespace

void draw_author_wish(App& app) {
  AuthorView& view = *app.author;
  Studio& studio = *view.studio;
  if (studio.proposal()) {
    draw_proposal(app, *studio.proposal());
  }
  heading("Make it look like this");
  for (const auto& words : studio.refusal()) {
    point("It cannot be had: " + words);
  }
  if (studio.making()) {
    if (app.widgets.button("wish.stop", "Stop looking")) {
      studio.stop_making();
    }
    ImGui::TextWrapped("Looking for a composition: it takes some seconds ...");
    return;
  }
  for (const auto& offer : studio.wish_offers()) {
    draw_wish(app, "wish." + offer.test, offer.title, offer.words, view.wish.words[offer.test]);
    draw_maker(app, offer.test);
  }
  draw_wish(app, "wish.colour", "Colour", studio.colours(), view.wish.colour);
  draw_wish(app, "wish.clarity", "Clarity", studio.clarities(), view.wish.clarity);
  label("Specific gravity");
  (void)app.widgets.line("wish.sg", view.wish.gravity, number_width());
  label("pH");
  (void)app.widgets.line("wish.ph", view.wish.ph, number_width());
  draw_amounts(app);
  if (app.widgets.button("wish.go", "Look for a composition")) {
    view.looked_for = true;
    view.focus_page = 3;
    view.wanted = [wishes = wishes_of(view)](Studio& s) { return s.make_it_look(wishes); };
  }
}

} // namespace matula::window
