// The bench beside the form, and "make it look like this".
#include "engine/assets/world.hpp"
#include "engine/drafting/form.hpp"
#include "engine/drafting/studio_impl.hpp"
#include "engine/drafting/substances.hpp"

namespace matula::drafting {

void Studio::Impl::see() {
  const unsigned now = draft->version();
  const auto& read = draft->case_as_read();
  Seen next;
  if (made) {
    say_liquid(made->liquid, next);
    next.figures = made->setup ? std::move(next.figures) : seen.figures;
    next.figures_fresh = made->version == now && made->setup;
    next.warnings = made->warnings;
    next.trouble = made->version == now ? made->trouble : "";
    next.done = made->version == now && made->done;
    for (const auto& advice : made->advice) {
      next.advice.push_back(advice.words);
    }
    next.worth = say_worth(made->worth);
    if (read && read->asked.specific_gravity) {
      next.floating = say_float(*made);
      next.floating->fresh = next.figures_fresh;
    }
  }
  for (const std::string& key : read ? read->asked.procedures : std::vector<std::string>{}) {
    const auto found = kept.find(key);
    if (found != kept.end()) {
      next.tests.push_back(say_test(found->second.shown, *shelf));
      next.tests.back().fresh = found->second.version == now;
      next.tests.back().version = found->second.version;
    } else {
      const auto* rule = shelf->standards->rules.find_test(key);
      next.tests.emplace_back();
      next.tests.back().test = key;
      next.tests.back().title = rule == nullptr ? key : rule->title;
    }
  }
  seen = std::move(next);
}

bool Studio::poll() {
  if (!impl_->draft) {
    return false;
  }
  const bool composed = impl_->take_over_composition();
  const auto latest = impl_->showing.latest();
  if (latest == nullptr || latest == impl_->made || latest->version < impl_->begun_at) {
    return composed;
  }
  impl_->made = latest;
  for (const auto& shown : latest->shown) {
    impl_->kept[shown.test] = {shown, latest->setup, latest->version};
  }
  impl_->see();
  return true;
}

bool Studio::working() const {
  return impl_->draft && (impl_->showing.busy() || impl_->composing.busy());
}

const Seen& Studio::seen() const {
  return impl_->seen;
}

Looks Studio::looks(const std::string& test, const appearance::View& view) const {
  if (test == float_key) {
    return impl_->made ? float_looks(*impl_->made, view) : Looks{};
  }
  const auto found = impl_->kept.find(test);
  return found == impl_->kept.end()
             ? Looks{}
             : looks_of(found->second.shown, *found->second.setup, *impl_->shelf, view);
}

std::optional<appearance::Appearance> Studio::specimen(const appearance::View& view) const {
  if (!impl_->made || !impl_->made->specimen) {
    return std::nullopt;
  }
  return bench::look(*impl_->made->specimen, *impl_->made->setup, "specimen", view);
}

std::vector<WishOffer> Studio::wish_offers() const {
  std::vector<WishOffer> offers;
  const auto& read = impl_->draft->case_as_read();
  for (const std::string& key : read ? read->asked.procedures : std::vector<std::string>{}) {
    const auto* rule = impl_->shelf->standards->rules.find_test(key);
    if (rule != nullptr && rule->result == procedure::Result::Word) {
      offers.push_back({key, rule->title, rule->words});
    }
  }
  return offers;
}

std::vector<std::string> Studio::colours() const {
  return author::colour_words(*impl_->shelf);
}

std::vector<std::string> Studio::clarities() const {
  return author::clarity_words(*impl_->shelf);
}

std::vector<Addition> Studio::substances() const {
  return wishable(*impl_->shelf);
}

std::string Studio::amount_to_wish(const std::string& path) const {
  const Row* row = find_row(impl_->form, "specimen." + path);
  return row == nullptr || row->value.empty() ? first_amount("specimen." + path, *impl_->shelf) : row->value;
}

std::string Studio::make_it_look(const std::vector<std::string>& wishes) {
  if (!impl_->draft->problems().empty()) {
    return "First put right what is wrong with the case.";
  }
  if (wishes.empty()) {
    return "Choose first what it is to look like.";
  }
  const auto wish = author::wish_from(wishes, *impl_->shelf);
  if (!wish) {
    return wish.error().front();
  }
  leave();
  impl_->composing.want([impl = impl_.get(), version = impl_->draft->version(),
                         base = impl_->draft->case_as_read(), asked = *wish](const scoring::GiveUp& give_up) {
    auto result = author::compose(*impl->shelf, *base, asked, give_up);
    if (!give_up()) {
      const std::lock_guard lock(impl->guard);
      impl->composed = Composed{version, std::move(result)};
    }
  });
  return "";
}

void Studio::stop_making() {
  impl_->composing.drop();
}

bool Studio::making() const {
  return impl_->composing.busy();
}

bool Studio::Impl::take_over_composition() {
  std::optional<Composed> found;
  {
    const std::lock_guard lock(guard);
    found.swap(composed);
  }
  if (!found || found->version != draft->version()) {
    return false;
  }
  if (!found->result) {
    refusal = found->result.error();
    return true;
  }
  proposed =
      author::changes_for(draft->text(), draft->case_as_read()->specimen, found->result->specimen, *shelf);
  proposed_for = found->version;
  proposal = say_proposal(*found->result, proposed, draft->text());
  return true;
}

const std::optional<Proposal>& Studio::proposal() const {
  return impl_->proposal;
}

const std::vector<std::string>& Studio::refusal() const {
  return impl_->refusal;
}

std::string Studio::take() {
  if (!impl_->proposal || impl_->proposed_for != impl_->draft->version()) {
    return "The case was changed meanwhile; ask again.";
  }
  return impl_->changed(impl_->draft->change(impl_->proposed, "made to look as wished"));
}

void Studio::leave() {
  impl_->proposal.reset();
  impl_->refusal.clear();
}

} // namespace matula::drafting
