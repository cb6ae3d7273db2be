#include "engine/desk/practice_impl.hpp"

namespace matula::desk {

struct Drill::Impl {
  std::shared_ptr<PracticeRoom::Impl> room;
  std::vector<practice::Skill> skills;
  std::uint64_t seed = 1;
  practice::Unknown unknown;
  practice::Unknown if_right; ///< What comes next, chosen while the learner looks.
  practice::Unknown if_wrong;
  std::optional<Exhibit> exhibit;
  Question question;
  std::optional<Feedback> feedback;
  int answered = 0;

  /// The tube that has just been answered stays where it was.
  [[nodiscard]] int rack_place() const { return feedback ? answered - 1 : answered; }

  [[nodiscard]] practice::Unknown choose(std::span<const learner::Answer> answers, int which) const {
    return practice::next_unknown(*room->store, answers, skills, now_s(),
                                  seed + static_cast<std::uint64_t>(2 * answered + which));
  }

  /// What comes after an answer of this worth.
  [[nodiscard]] practice::Unknown choose_after(bool right) const {
    auto answers = room->answers;
    practice::Judged judged;
    judged.credit = right ? 1000 : 0;
    answers.push_back(
        practice::answer_of(*room->store, exhibit->item(), judged, learner::From::Drill, now_s()));
    return choose(answers, right ? 1 : 2);
  }

  /// Looks ahead: both of the next ones, and the tubes to lay beside this one.
  void prepare() {
    if_right = choose_after(true);
    if_wrong = choose_after(false);
    auto wanted = exhibit->neighbours(*room->store);
    wanted.push_back(if_right);
    wanted.push_back(if_wrong);
    room->maker->want(wanted);
  }

  void begin(const practice::Unknown& next) {
    unknown = next;
    exhibit.reset();
    feedback.reset();
    room->maker->want({unknown});
  }
};

Drill::Drill(const PracticeRoom& room, const std::vector<std::string>& skills, std::uint64_t seed)
    : impl_(std::make_unique<Impl>()) {
  impl_->room = room.impl_;
  impl_->seed = seed;
  for (const std::string& word : skills) {
    if (const auto skill = practice::skill_from_word(word)) {
      impl_->skills.push_back(*skill);
    }
  }
  if (impl_->skills.empty()) {
    impl_->skills.assign(practice::all_skills.begin(), practice::all_skills.end());
  }
  impl_->begin(impl_->choose(impl_->room->answers, 0));
}

Drill::~Drill() = default;
Drill::Drill(Drill&&) noexcept = default;
Drill& Drill::operator=(Drill&&) noexcept = default;

bool Drill::ready() {
  if (!impl_->exhibit) {
    if (auto item = impl_->room->maker->ready(impl_->unknown)) {
      impl_->exhibit.emplace(std::move(item));
      impl_->question = impl_->exhibit->question(*impl_->room->store, true);
      impl_->prepare();
    } else if (impl_->room->maker->failed(impl_->unknown)) {
      impl_->seed += 1000; // Another one; it would be a fault of the program.
      impl_->begin(impl_->choose(impl_->room->answers, 0));
    }
  }
  return impl_->exhibit.has_value();
}

const Question& Drill::question() const {
  return impl_->question;
}

bench::Scene Drill::scene(const appearance::View& view) const {
  return impl_->exhibit ? impl_->exhibit->scene(view, impl_->rack_place()) : bench::Scene{};
}

std::string Drill::in_hand() const {
  return impl_->exhibit ? impl_->exhibit->in_hand(impl_->rack_place()) : "";
}

std::string Drill::answer(const std::vector<std::string>& reply) {
  if (!impl_->exhibit || impl_->feedback) {
    return "There is nothing to answer.";
  }
  const auto& item = impl_->exhibit->item();
  const auto judged = practice::judge(*impl_->room->store, item, reply);
  impl_->feedback = feedback_of(judged);
  ++impl_->answered;
  return impl_->room->keep(
      {practice::answer_of(*impl_->room->store, item, judged, learner::From::Drill, now_s())});
}

const std::optional<Feedback>& Drill::feedback() const {
  return impl_->feedback;
}

std::vector<Beside> Drill::beside(const appearance::View& view) const {
  return impl_->feedback ? impl_->exhibit->beside(*impl_->room->maker, view) : std::vector<Beside>{};
}

bool Drill::beside_pending() const {
  return impl_->feedback && !impl_->exhibit->neighbours(*impl_->room->store).empty() && beside({}).empty();
}

void Drill::next() {
  if (impl_->feedback) {
    impl_->begin(impl_->feedback->right ? impl_->if_right : impl_->if_wrong);
  }
}

int Drill::answered() const {
  return impl_->answered;
}

} // namespace matula::desk
