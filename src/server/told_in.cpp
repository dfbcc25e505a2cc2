#include "server/told_in.h"

#include "server/answers.h"

#include <utility>

namespace keenfall::server {

RouteHandler telling_in_units(ToldHandler answer) {
  return [answer = std::move(answer)](const HttpRequest& request, const PathParameters& path) {
    auto told = materials::told_in(header_of(request, "x-keenfall-told-in"));
    if (told) return answer(request, path, *told);
    told.error().place.column = "X-Keenfall-Told-In";
    return problem_answer(told.error());
  };
}

}  // namespace keenfall::server
