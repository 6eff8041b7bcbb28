package varanid.intake.vet;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface ConfirmationRows extends Repository<ConfirmationRow, RowKey> {

    ConfirmationRow saveAndFlush(ConfirmationRow row);

    @Query("""
            select c from ConfirmationRow c
            where c.key.organisationId = :organisationId and c.animalId = :animalId and c.answerId in :answerIds""")
    List<ConfirmationRow> list(UUID organisationId, UUID animalId, List<UUID> answerIds);
}
