package club.emberwell.access;

import club.emberwell.member.ClubSettings;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.ext.Provider;

/** Hides the routes of local sign-in while it is switched off. */
@Provider
@LocalSignIn
class LocalSignInFilter implements ContainerRequestFilter {
  private final ClubSettings club;

  LocalSignInFilter(ClubSettings club) {
    this.club = club;
  }

  @Override
  public void filter(ContainerRequestContext request) {
    if (!club.localSignIn()) {
      throw Problems.notFound().exception();
    }
  }
}
