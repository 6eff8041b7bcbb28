package varanid.intake.account;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.CallerLookup;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.Secret;
import varanid.intake.platform.web.SessionCallerLookup;

/**
 * Finds who a token belongs to, or a session. Any text costs one hash and one query; the database compares hashes, so its timing says
 * nothing about a token.
 */
@Component
class TokenCallers implements CallerLookup, SessionCallerLookup {

    private final JdbcClient jdbc;
    private final Clock clock;

    TokenCallers(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public Result find(String token) {
        TokenText text = new TokenText(token);
        Optional<Found> found = jdbc.sql("""
                        SELECT t.id, t.person_id, t.expires_at, t.revoked_at,
                               p.keeper, p.clinician, p.administrator, p.active, o.zone
                        FROM api_token t
                        JOIN person p ON p.organisation_id = t.organisation_id AND p.id = t.person_id
                        JOIN organisation o ON o.organisation_id = t.organisation_id
                        WHERE t.organisation_id = ? AND t.token_hash = ?""")
                .params(text.organisationId(), text.hash())
                .query((row, number) -> read(row, text))
                .optional();
        return found.map(this::judge).orElseGet(() -> new Refused("The token is not known."));
    }

    @Override
    public Optional<Caller> find(UUID organisationId, UUID personId, UUID signInId, Secret key) {
        return jdbc.sql("""
                        SELECT p.keeper, p.clinician, p.administrator, o.zone
                        FROM person p JOIN organisation o ON o.organisation_id = p.organisation_id
                        WHERE p.organisation_id = ? AND p.id = ? AND p.active""")
                .params(organisationId, personId)
                .query((row, number) -> new Caller(
                        organisationId, personId, signInId, roles(row), ZoneId.of(row.getString("zone")), key))
                .optional();
    }

    private Result judge(Found found) {
        if (found.revokedAt() != null) {
            return new Refused("The token was revoked.");
        } else if (found.expiresAt() != null && !clock.instant().isBefore(found.expiresAt())) {
            return new Refused("The token has expired.");
        } else if (!found.active()) {
            return new Refused("The token's person is not active any more.");
        }
        return new Known(found.caller());
    }

    private static Found read(ResultSet row, TokenText text) throws SQLException {
        Caller caller = new Caller(
                text.organisationId(),
                row.getObject("person_id", UUID.class),
                row.getObject("id", UUID.class),
                roles(row),
                ZoneId.of(row.getString("zone")),
                new Secret(text.text()));
        return new Found(caller, row.getBoolean("active"), instant(row, "expires_at"), instant(row, "revoked_at"));
    }

    private static Set<Role> roles(ResultSet row) throws SQLException {
        Set<Role> roles = EnumSet.noneOf(Role.class);
        for (Role role : Role.values()) {
            if (row.getBoolean(role.code())) {
                roles.add(role);
            }
        }
        return roles;
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        @Nullable OffsetDateTime moment = row.getObject(column, OffsetDateTime.class);
        return moment == null ? null : moment.toInstant();
    }

    private record Found(
            Caller caller,
            boolean active,
            @Nullable Instant expiresAt,
            @Nullable Instant revokedAt) {}
}
