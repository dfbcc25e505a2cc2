// The log of a product of many positive factors, with few logarithms.
#pragma once

#include <cmath>

namespace keenfall::blunting {

class LogProduct {
 public:
  void multiply(double factor) {
    product_ *= factor;
    if (product_ < 1e-100 || product_ > 1e100) {
      log_ += std::log(product_);
      product_ = 1;
    }
  }
  [[nodiscard]] double log() const { return log_ + std::log(product_); }

 private:
  double product_ = 1;
  double log_ = 0;
};

}  // namespace keenfall::blunting
