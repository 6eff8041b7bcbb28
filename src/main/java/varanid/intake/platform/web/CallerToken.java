package varanid.intake.platform.web;

import org.springframework.security.authentication.AbstractAuthenticationToken;
import org.springframework.security.core.authority.AuthorityUtils;

/** The caller, as Spring Security carries it through the request. */
final class CallerToken extends AbstractAuthenticationToken {

    private static final long serialVersionUID = 1L;

    private final transient Caller caller;
    private final boolean bySession;

    /** @param bySession whether a browser sent the proof by itself, so that it does not show what the person wanted */
    CallerToken(Caller caller, boolean bySession) {
        super(AuthorityUtils.NO_AUTHORITIES);
        this.caller = caller;
        this.bySession = bySession;
        setAuthenticated(true);
    }

    Caller caller() {
        return caller;
    }

    boolean bySession() {
        return bySession;
    }

    @Override
    public Object getCredentials() {
        return "";
    }

    @Override
    public Object getPrincipal() {
        return caller.personId();
    }
}
