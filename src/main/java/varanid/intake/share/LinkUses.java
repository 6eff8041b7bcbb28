package varanid.intake.share;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import varanid.intake.account.ActivePeople;

/** Reads what became of links, in two queries however many they are. */
@Component
class LinkUses {

    private final JdbcClient jdbc;
    private final ActivePeople people;

    LinkUses(JdbcClient jdbc, ActivePeople people) {
        this.jdbc = jdbc;
        this.people = people;
    }

    /** By the link's id; the links are of one organisation. */
    Map<UUID, LinkUse> of(List<ShareLinkRow> links) {
        if (links.isEmpty()) {
            return Map.of();
        }
        UUID organisation = links.get(0).key.organisationId();
        Set<UUID> active = people.only(
                organisation, links.stream().map(link -> link.recordedBy).collect(Collectors.toSet()));
        Map<UUID, LinkUse> uses = new HashMap<>();
        jdbc.sql("""
                        SELECT l.id, l.recorded_by, r.recorded_at AS revoked_at, o.openings, o.last_opened_at
                        FROM share_link l
                        LEFT JOIN share_link_revocation r
                            ON r.organisation_id = l.organisation_id AND r.link_id = l.id
                        CROSS JOIN LATERAL (
                            SELECT count(*) AS openings, max(opened_at) AS last_opened_at
                            FROM share_link_opening
                            WHERE organisation_id = l.organisation_id AND link_id = l.id) o
                        WHERE l.organisation_id = :organisation AND l.id IN (:links)""")
                .param("organisation", organisation)
                .param("links", links.stream().map(ShareLinkRow::id).toList())
                .query(set -> {
                    uses.put(
                            set.getObject("id", UUID.class),
                            new LinkUse(
                                    instant(set, "revoked_at"),
                                    set.getInt("openings"),
                                    instant(set, "last_opened_at"),
                                    active.contains(set.getObject("recorded_by", UUID.class))));
                });
        return uses;
    }

    private static @Nullable Instant instant(ResultSet set, String column) throws SQLException {
        Timestamp at = set.getTimestamp(column);
        return at == null ? null : at.toInstant();
    }
}
