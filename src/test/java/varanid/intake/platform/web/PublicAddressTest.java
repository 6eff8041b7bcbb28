package varanid.intake.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.mock.web.MockHttpServletRequest;
import varanid.intake.platform.start.CannotStart;

class PublicAddressTest {

    private static MockHttpServletRequest sentTo(String scheme, String host, int port) {
        MockHttpServletRequest request = new MockHttpServletRequest();
        request.setScheme(scheme);
        request.setServerName(host);
        request.setServerPort(port);
        request.addHeader("X-Forwarded-Host", "evil.example");
        request.addHeader("Forwarded", "host=evil.example");
        return request;
    }

    @ParameterizedTest
    @CsvSource({
        "https://intake.example.org, https://intake.example.org/summary/",
        "https://intake.example.org/, https://intake.example.org/summary/",
        "' https://example.org:8443/intake/ ', https://example.org:8443/intake/summary/",
        "http://192.0.2.7:8080, http://192.0.2.7:8080/summary/"
    })
    void whatIsConfiguredStandsWhateverTheRequestSays(String configured, String address) {
        PublicAddress publicAddress = new PublicAddress(configured);
        for (String host : new String[] {"evil.example", "not a host", "127.0.0.1"}) {
            assertThat(publicAddress.resolve(sentTo("http", host, 80), "/summary/"))
                    .hasToString(address);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "http, 127.0.0.1, 8080, http://127.0.0.1:8080/summary/",
        "http, rescue.local, 80, http://rescue.local/summary/",
        "https, rescue.local, 443, https://rescue.local/summary/",
        "https, rescue.local, 80, https://rescue.local:80/summary/",
        "http, [::1], 8080, http://[::1]:8080/summary/"
    })
    void elseItIsWhatTheRequestWasSentTo(String scheme, String host, int port, String address) {
        assertThat(new PublicAddress("").resolve(sentTo(scheme, host, port), "/summary/"))
                .hasToString(address);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "evil.example/x", "a@evil.example", "a b", "\"><script>", "evil.example#", "-", "[x]", "%2e"
            })
    void aHostThatIsNoneIsRefused(String host) {
        assertThatThrownBy(() -> new PublicAddress(" ").resolve(sentTo("http", host, 80), "/summary/"))
                .isInstanceOfSatisfying(
                        ProblemException.class,
                        problem -> assertThat(problem.type()).isEqualTo(ProblemType.MALFORMED_REQUEST));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "intake.example.org",
                "ftp://example.org",
                "https://",
                "https://example.org/?x",
                "https://example.org/#x",
                "https://me@example.org",
                "https://exa mple.org",
                "javascript:alert(1)"
            })
    void whatIsNoWebAddressStopsTheStart(String configured) {
        assertThatThrownBy(() -> new PublicAddress(configured))
                .isInstanceOf(CannotStart.class)
                .hasMessageContaining("VARANID_INTAKE_PUBLIC_ADDRESS");
    }
}
