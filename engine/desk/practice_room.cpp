#include "engine/desk/practice_impl.hpp"
#include "engine/learner/memory.hpp"
#include "engine/practice/quiz_log.hpp"

#include <algorithm>

namespace matula::desk {

PracticeRoom::PracticeRoom(std::shared_ptr<Impl> impl) : impl_(std::move(impl)) {}
PracticeRoom::~PracticeRoom() = default;
PracticeRoom::PracticeRoom(PracticeRoom&&) noexcept = default;
PracticeRoom& PracticeRoom::operator=(PracticeRoom&&) noexcept = default;

tl::expected<PracticeRoom, scenario::Problems> PracticeRoom::load(const Ground& ground,
                                                                  const std::filesystem::path& learner) {
  auto store = practice::load_store(ground.world(), ground.standards(), ground.assets_folder());
  if (!store) {
    return tl::make_unexpected(store.error());
  }
  auto impl = std::make_shared<Impl>();
  impl->ground = &ground;
  impl->store = *store;
  impl->maker = std::make_unique<practice::Maker>(*store);
  impl->folder = learner;
  impl->answers = learner::load(impl->record_file()).answers; // Lines that cannot be read stay in the file.
  return PracticeRoom(std::move(impl));
}

std::vector<SkillOffer> PracticeRoom::skills() const {
  const auto kept = learner::rules_kept(impl_->answers, impl_->store->learning, now_s());
  std::vector<SkillOffer> offers;
  for (const practice::Skill skill : practice::all_skills) {
    SkillOffer offer{practice::to_word(skill), practice::title_of(skill), practice::about(skill), 0, false};
    offer.answered = static_cast<int>(std::count_if(impl_->answers.begin(), impl_->answers.end(),
                                                    [&](const auto& one) { return one.skill == offer.key; }));
    offer.due = std::any_of(kept.begin(), kept.end(),
                            [&](const auto& one) { return one.skill == offer.key && one.due; });
    offers.push_back(std::move(offer));
  }
  return offers;
}

std::vector<QuizOffer> PracticeRoom::quizzes() const {
  std::vector<QuizOffer> offers;
  for (const auto& file : practice::blueprint_files(impl_->ground->assets_folder() / "quizzes")) {
    const auto blueprint = practice::read_blueprint(file, impl_->store->rules, impl_->ground->standards());
    if (blueprint) {
      offers.push_back(
          {file, blueprint->title, blueprint->about, blueprint->size(), blueprint->minutes, 0, ""});
    } else {
      offers.push_back({file, file.stem().string(), "", 0, 0, 0, scenario::to_text(blueprint.error())});
    }
  }
  return offers;
}

std::vector<QuizOffer> PracticeRoom::unfinished() const {
  std::vector<QuizOffer> offers;
  for (const auto& file : practice::quiz_files(impl_->quiz_folder())) {
    const auto state = practice::read_quiz(file);
    if (!state) {
      offers.push_back({file, file.stem().string(), "", 0, 0, 0, scenario::to_text(state.error())});
    } else if (!state->finished) {
      const auto answered = std::count_if(state->replies.begin(), state->replies.end(),
                                          [](const auto& reply) { return reply.has_value(); });
      offers.push_back({file, state->quiz.title, "", static_cast<int>(state->replies.size()),
                        state->quiz.minutes, static_cast<int>(answered), ""});
    }
  }
  return offers;
}

} // namespace matula::desk
