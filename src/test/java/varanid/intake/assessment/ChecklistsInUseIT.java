package varanid.intake.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import varanid.intake.checklist.Catalogue;
import varanid.intake.checklist.Edition;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** A version of a checklist means one thing for ever, also to a database that has used it. */
@ServiceTest
class ChecklistsInUseIT {

    /** {@code printf another | sha256sum} */
    private static final String ANOTHER_DIGEST = "ae448ac86c4e8e4dec645729708ef41873ae79c6dff84eff73360989487f08e5";

    @Autowired
    Organisations organisations;

    @Autowired
    ChecklistsInUse checklists;

    @Autowired
    Catalogue catalogue;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    PlatformTransactionManager transactions;

    @Test
    void keepsTheBytesAtFirstUseForEachOrganisation() {
        Edition edition = edition();
        for (int i = 0; i < 2; i++) {
            Organisations.Organisation organisation = organisations.create();
            Client keeper = organisation.keeper();
            String animal =
                    keeper.post("/api/v1/animals", "{}").header("Location").orElseThrow();
            assertThat(digestsOf(organisation.id())).isZero();
            for (int look = 0; look < 2; look++) {
                keeper.post(animal + "/assessments", "{\"checklist\":\"varanid-intake\",\"version\":1}");
            }
            assertThat(digestsOf(organisation.id())).isEqualTo(1);
            assertThat(jdbc.sql("SELECT file FROM checklist_in_use WHERE organisation_id = ? AND checklist_sha256 = ?")
                            .params(organisation.id(), edition.sha256())
                            .query(String.class)
                            .single())
                    .isEqualTo(edition.file());
        }
        assertThatCode(checklists::afterSingletonsInstantiated).doesNotThrowAnyException();
    }

    @Test
    void refusesToStartOnADatabaseThatHasUsedOtherBytesUnderTheVersion() {
        UUID organisation = organisations.create().id();
        Edition edition = edition();
        // Rolled back: other tests share the database, and the row could never be removed.
        new TransactionTemplate(transactions).executeWithoutResult(status -> {
            status.setRollbackOnly();
            useOtherBytes(organisation, edition);
            assertThatExceptionOfType(CannotStart.class)
                    .isThrownBy(checklists::afterSingletonsInstantiated)
                    .withMessageContaining("varanid-intake version 1")
                    .withMessageContaining(edition.sha256())
                    .withMessageContaining(ANOTHER_DIGEST)
                    .satisfies(refused -> assertThat(refused.whatToDo()).contains("as a new version"));
        });
    }

    @Test
    void refusesToScoreWhereAnotherProcessUsedOtherBytesMeanwhile() {
        UUID organisation = organisations.create().id();
        Edition edition = edition();
        new TransactionTemplate(transactions).executeWithoutResult(status -> {
            status.setRollbackOnly();
            useOtherBytes(organisation, edition);
            assertThatExceptionOfType(IllegalStateException.class)
                    .isThrownBy(() -> checklists.hold(organisation, edition))
                    .withMessageContaining(ANOTHER_DIGEST);
        });
    }

    private Edition edition() {
        return catalogue.find("varanid-intake", 1).orElseThrow();
    }

    private void useOtherBytes(UUID organisation, Edition edition) {
        jdbc.sql("""
                        INSERT INTO checklist_in_use
                        (organisation_id, checklist_id, checklist_version, checklist_sha256, file, first_used_at)
                        VALUES (?, ?, ?, ?, 'another', now())""")
                .params(organisation, edition.id(), edition.version(), ANOTHER_DIGEST)
                .update();
    }

    private int digestsOf(UUID organisation) {
        return jdbc.sql("SELECT count(*) FROM checklist_in_use WHERE organisation_id = ?")
                .param(organisation)
                .query(Integer.class)
                .single();
    }
}
