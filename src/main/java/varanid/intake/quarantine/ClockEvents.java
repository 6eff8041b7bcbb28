package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface ClockEvents extends Repository<ClockEventRow, RowKey> {

    ClockEventRow saveAndFlush(ClockEventRow row);

    /** Who came and went, in order: enough to know when the room was last empty. */
    @Query("""
            select e.onDay as onDay, e.kind as kind, e.animalId as animalId from ClockEventRow e
            where e.key.organisationId = :organisationId and e.roomId = :roomId and e.kind in ('placed', 'left')
            and e.onDay <= :day
            and not exists (
                select 1 from ClockEventRow w where w.key.organisationId = :organisationId
                and w.about = e.key.id and w.kind = 'withdrawn')
            order by e.onDay, e.key.id""")
    List<ComingAndGoing> listComingAndGoing(UUID organisationId, UUID roomId, LocalDate day);

    @Query("""
            select e from ClockEventRow e
            where e.key.organisationId = :organisationId and e.roomId = :roomId and e.onDay >= :day
            order by e.onDay, e.key.id""")
    List<ClockEventRow> listFrom(UUID organisationId, UUID roomId, LocalDate day);

    @Query("""
            select e from ClockEventRow e
            where e.key.organisationId = :organisationId and e.roomId = :roomId and e.key.id > :after
            order by e.key.id""")
    List<ClockEventRow> list(UUID organisationId, UUID roomId, UUID after, Limit limit);

    @Query("""
            select e from ClockEventRow e
            where e.key.organisationId = :organisationId and e.roomId = :roomId and e.key.id = :id""")
    Optional<ClockEventRow> find(UUID organisationId, UUID roomId, UUID id);

    /** All of an animal that follow from another record and were not withdrawn, in every room. */
    @Query("""
            select e from ClockEventRow e
            where e.key.organisationId = :organisationId and e.animalId = :animalId and e.sourceId is not null
            and e.kind <> 'withdrawn'
            and not exists (
                select 1 from ClockEventRow w where w.key.organisationId = :organisationId
                and w.about = e.key.id and w.kind = 'withdrawn')
            order by e.key.id""")
    List<ClockEventRow> listStandingOfAnimal(UUID organisationId, UUID animalId);

    /** All that follow from these answers of a vet and were not withdrawn. */
    @Query("""
            select e from ClockEventRow e
            where e.key.organisationId = :organisationId and e.sourceId in :answers and e.sourceKind = 'vet-answer'
            and e.kind <> 'withdrawn'
            and not exists (
                select 1 from ClockEventRow w where w.key.organisationId = :organisationId
                and w.about = e.key.id and w.kind = 'withdrawn')
            order by e.key.id""")
    List<ClockEventRow> listStandingOfAnswers(UUID organisationId, List<UUID> answers);

    /** The rooms where something of the animal occurred. */
    @Query("""
            select distinct e.roomId from ClockEventRow e
            where e.key.organisationId = :organisationId and e.animalId = :animalId and e.kind = 'occurred'
            order by e.roomId""")
    List<UUID> listRoomsOfOccurrences(UUID organisationId, UUID animalId);

    /** What vets said about these occurrences and was not withdrawn, in the order of its days. */
    @Query("""
            select e from ClockEventRow e
            where e.key.organisationId = :organisationId and e.about in :ids and e.kind = 'vet-spoke'
            and not exists (
                select 1 from ClockEventRow w where w.key.organisationId = :organisationId
                and w.about = e.key.id and w.kind = 'withdrawn')
            order by e.onDay, e.key.id""")
    List<ClockEventRow> listWords(UUID organisationId, List<UUID> ids);

    @Query("""
            select w from ClockEventRow w
            where w.key.organisationId = :organisationId and w.about in :ids and w.kind = 'withdrawn'""")
    List<ClockEventRow> listWithdrawals(UUID organisationId, List<UUID> ids);

    /** An animal that came or went. */
    interface ComingAndGoing {
        LocalDate getOnDay();

        String getKind();

        UUID getAnimalId();
    }
}
