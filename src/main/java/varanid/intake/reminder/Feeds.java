package varanid.intake.reminder;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.account.ActivePeople;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.web.SecretText;

/** What calendar programs are answered. */
@Service
class Feeds {

    static final String SECRET_PREFIX = "vc1";

    /**
     * How long a task that is planned no more is still told as cancelled or done. A calendar program that was off for a
     * holiday then still hears of it; proposed by us, for no standard names a time. Left out after that, most programs
     * drop it by themselves.
     */
    static final Duration TOLD_AFTER_ITS_END = Duration.ofDays(60);

    private static final Comparator<Reminder> BY_DAY = Comparator.comparing(
                    (Reminder reminder) -> reminder.task().due())
            .thenComparing(reminder -> reminder.task().uid());

    private final CalendarLinks links;
    private final ActivePeople people;
    private final KeptReminders kept;
    private final List<TaskSource> sources;
    private final OrganisationLock lock;
    private final Clock clock;

    Feeds(
            CalendarLinks links,
            ActivePeople people,
            KeptReminders kept,
            ObjectProvider<TaskSource> sources,
            OrganisationLock lock,
            Clock clock) {
        this.links = links;
        this.people = people;
        this.kept = kept;
        this.sources = sources.orderedStream().toList();
        this.lock = lock;
        this.clock = clock;
    }

    /** A link that opens something. */
    record OpenLink(CalendarLinkRow row, ZoneId zone) {}

    /** The link with that secret, where it was not revoked and its person is still active. Any text costs one query. */
    Optional<OpenLink> find(String text) {
        SecretText secret = new SecretText(SECRET_PREFIX, text);
        return links.findOpen(secret.organisationId(), secret.hash())
                .flatMap(row ->
                        people.findZone(row.organisationId(), row.personId()).map(zone -> new OpenLink(row, zone)));
    }

    /** The file of a link, as plans are now. What changed since calendars were told last is kept with it. */
    @Transactional
    byte[] write(OpenLink link) {
        CalendarLinkRow row = link.row();
        byte[] file = write(row.organisationId(), link.zone(), row.animalId(), row.label(), row.form());
        links.noteFetch(row.organisationId(), row.id(), LocalDate.ofInstant(clock.instant(), link.zone()));
        return file;
    }

    /** The same for somebody who sent a token. */
    @Transactional
    byte[] write(UUID organisationId, ZoneId zone, Optional<UUID> animalId, String label, CalendarFeed.As form) {
        lock.hold(organisationId);
        Instant now = clock.instant();
        List<PlannedTask> told = told(organisationId, zone, animalId, LocalDate.ofInstant(now, zone));
        List<Reminder> reminders = kept.revise(organisationId, animalId, told, now, now.minus(TOLD_AFTER_ITS_END));
        return CalendarFeed.write(label, reminders.stream().sorted(BY_DAY).toList(), form);
    }

    private List<PlannedTask> told(UUID organisationId, ZoneId zone, Optional<UUID> animalId, LocalDate today) {
        return sources.stream()
                .flatMap(source -> source.tasks(organisationId, zone, animalId, today).stream())
                .toList();
    }
}
