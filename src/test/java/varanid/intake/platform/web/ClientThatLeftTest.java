package varanid.intake.platform.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.apache.catalina.connector.ClientAbortException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.beans.factory.support.StaticListableBeanFactory;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.mock.web.MockHttpServletRequest;
import tools.jackson.databind.json.JsonMapper;

/** Who closes a page before it is there has broken nothing. */
@ExtendWith(OutputCaptureExtension.class)
class ClientThatLeftTest {

    @Test
    void isNoErrorOfTheService(CapturedOutput output) {
        ProblemAdvice advice = new ProblemAdvice(new ProblemWriter(
                JsonMapper.shared(), new StaticListableBeanFactory().getBeanProvider(ErrorPage.class)));
        assertThat(advice.problem(
                        new ClientAbortException(new IOException("Broken pipe")), new MockHttpServletRequest()))
                .isNull();
        assertThat(output.getAll()).doesNotContain("ERROR");
    }
}
