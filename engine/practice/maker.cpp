#include "engine/practice/maker.hpp"

#include <algorithm>
#include <condition_variable>
#include <deque>
#include <exception>
#include <map>
#include <mutex>
#include <thread>

namespace matula::practice {

namespace {
constexpr std::size_t most_kept = 160; // A bench with its tube is some hundred kilobytes.
}

struct Maker::Impl {
  explicit Impl(std::shared_ptr<const Store> the_store) : store(std::move(the_store)) {}

  struct Made {
    std::shared_ptr<const Item> item;
    std::exception_ptr error;
  };

  std::shared_ptr<const Store> store;
  mutable std::mutex guard;
  std::condition_variable changed;
  std::deque<Unknown> wanted;
  std::map<std::string, Made> made;
  std::deque<std::string> order; ///< Of `made`, oldest first.
  bool ends = false;
  std::thread worker;

  void work() {
    std::unique_lock lock(guard);
    while (true) {
      changed.wait(lock, [this] { return ends || !wanted.empty(); });
      if (ends) {
        return;
      }
      const Unknown unknown = wanted.front();
      wanted.pop_front();
      if (made.count(to_text(unknown)) > 0) {
        continue;
      }
      lock.unlock();
      Made one;
      try {
        one.item = std::make_shared<const Item>(make_item(*store, unknown));
      } catch (...) {
        one.error = std::current_exception();
      }
      lock.lock();
      keep(to_text(unknown), std::move(one));
      changed.notify_all();
    }
  }

  void keep(const std::string& name, Made one) {
    made[name] = std::move(one);
    order.push_back(name);
    if (order.size() > most_kept) {
      made.erase(order.front());
      order.pop_front();
    }
  }
};

Maker::Maker(std::shared_ptr<const Store> store) : impl_(std::make_unique<Impl>(std::move(store))) {
  impl_->worker = std::thread([this] { impl_->work(); });
}

Maker::~Maker() {
  {
    const std::lock_guard lock(impl_->guard);
    impl_->ends = true;
  }
  impl_->changed.notify_all();
  impl_->worker.join();
}

void Maker::want(const std::vector<Unknown>& unknowns) {
  {
    const std::lock_guard lock(impl_->guard);
    for (std::size_t i = unknowns.size(); i-- > 0;) {
      auto& wanted = impl_->wanted;
      wanted.erase(std::remove(wanted.begin(), wanted.end(), unknowns[i]), wanted.end());
      if (impl_->made.count(to_text(unknowns[i])) == 0) {
        wanted.push_front(unknowns[i]);
      }
    }
  }
  impl_->changed.notify_all();
}

std::shared_ptr<const Item> Maker::ready(const Unknown& unknown) const {
  const std::lock_guard lock(impl_->guard);
  const auto found = impl_->made.find(to_text(unknown));
  return found == impl_->made.end() ? nullptr : found->second.item;
}

bool Maker::failed(const Unknown& unknown) const {
  const std::lock_guard lock(impl_->guard);
  const auto found = impl_->made.find(to_text(unknown));
  return found != impl_->made.end() && found->second.error != nullptr;
}

std::shared_ptr<const Item> Maker::now(const Unknown& unknown) {
  const std::string name = to_text(unknown);
  if (auto item = ready(unknown)) {
    return item;
  }
  want({unknown});
  std::unique_lock lock(impl_->guard);
  impl_->changed.wait(lock, [&] { return impl_->made.count(name) > 0; });
  const auto& one = impl_->made.at(name);
  if (one.error) {
    std::rethrow_exception(one.error);
  }
  return one.item;
}

const Store& Maker::store() const {
  return *impl_->store;
}

} // namespace matula::practice
