package varanid.intake.reminder;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.NativeQuery;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface CalendarLinks extends Repository<CalendarLinkRow, RowKey> {

    CalendarLinkRow save(CalendarLinkRow row);

    Optional<CalendarLinkRow> findById(RowKey key);

    /** The one with that secret. The database compares hashes, so its timing says nothing about a secret. */
    @Query("""
            select l from CalendarLinkRow l
            where l.key.organisationId = :organisationId and l.secretHash = :secretHash and l.revokedAt is null""")
    Optional<CalendarLinkRow> findOpen(UUID organisationId, byte[] secretHash);

    @Query("""
            select l from CalendarLinkRow l
            where l.key.organisationId = :organisationId and l.key.id > :after
            order by l.key.id""")
    List<CalendarLinkRow> list(UUID organisationId, UUID after, Limit limit);

    @Query("""
            select l from CalendarLinkRow l
            where l.key.organisationId = :organisationId and l.personId = :personId and l.key.id > :after
            order by l.key.id""")
    List<CalendarLinkRow> listOfPerson(UUID organisationId, UUID personId, UUID after, Limit limit);

    @Modifying
    @NativeQuery("""
            UPDATE calendar_link SET last_fetched_on = :day
            WHERE organisation_id = :organisationId AND id = :id AND last_fetched_on IS DISTINCT FROM :day""")
    void noteFetch(UUID organisationId, UUID id, LocalDate day);
}
