package org.geneticsrules.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.lang.ArchRule;
import java.lang.module.ModuleDescriptor;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each rule of construction finds the classes that break it on purpose, and only those. */
class ArchitectureRulesTest {
    private static final Map<String, Integer> FLOORS = Map.of("low", 1, "high", 2, "foreign", 2, "ambient", 1);

    private static JavaClasses fixtures;

    @BeforeAll
    static void read() {
        fixtures = Compiled.fixtures();
    }

    @Test
    void use_of_a_higher_floor_is_found() {
        String found = violations(FloorRule.usesLowerFloorsOnly(Compiled.FIXTURE, FLOORS));
        assertTrue(found.contains("low (1) uses high (2)"), found);
        assertFalse(found.contains("high (2) uses low"), found);
    }

    @Test
    void use_of_the_same_floor_is_found() {
        String found = violations(FloorRule.usesLowerFloorsOnly(
                Compiled.FIXTURE, Map.of("low", 1, "high", 1, "foreign", 1, "ambient", 1, "stray", 1)));
        assertTrue(found.contains("low (1) uses high (1)"), found);
        assertTrue(found.contains("high (1) uses low (1)"), found);
    }

    @Test
    void a_package_without_a_floor_is_found() {
        String found = violations(FloorRule.usesLowerFloorsOnly(Compiled.FIXTURE, FLOORS));
        assertTrue(found.contains("Stray is in package 'stray', which has no floor"), found);
    }

    @Test
    void a_cycle_is_found() {
        String found = violations(DependencyRules.packagesAreFreeOfCycles(Compiled.FIXTURE));
        assertTrue(found.contains("Slice high") && found.contains("Slice low"), found);
        assertFalse(found.contains("Slice ambient"), found);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Foreign shows com.google.common.base.Converter",
                "Foreign.field shows com.google.common.collect.ImmutableList",
                "Foreign.<init>(com.google.common.base.Joiner) shows com.google.common.base.Joiner",
                "Foreign.result() shows com.google.common.collect.ImmutableSet",
                "Foreign.parameter([Lcom.google.common.base.Splitter;) shows com.google.common.base.Splitter",
                "Foreign.argument(java.util.List) shows com.google.common.collect.Range",
                "Foreign.bound(com.google.common.collect.ImmutableMap) shows com.google.common.collect.ImmutableMap",
                "Foreign.failure() shows com.google.common.util.concurrent.UncheckedExecutionException",
                "Foreign$Nested shows com.google.common.collect.Multimap"
            })
    void a_foreign_type_in_a_signature_is_found(String expected) {
        String found = violations(SignatureRule.publicSignaturesUseOwnTypesOnly(Compiled.FIXTURE));
        assertTrue(found.contains(expected), found);
    }

    @Test
    void a_foreign_type_that_no_caller_sees_is_allowed() {
        String found = violations(SignatureRule.publicSignaturesUseOwnTypesOnly(Compiled.FIXTURE));
        assertFalse(found.toLowerCase(Locale.ROOT).contains("unseen"), found);
    }

    @Test
    void jackson_outside_the_json_package_is_found() {
        String found = violations(DependencyRules.onlyJsonUsesJackson(Compiled.FIXTURE));
        assertTrue(found.contains("UsesJackson.mapper()"), found);
        assertFalse(found.contains("Foreign."), found);
    }

    @Test
    void commons_csv_outside_the_table_package_is_found() {
        String found = violations(DependencyRules.onlyTableUsesCommonsCsv(Compiled.FIXTURE));
        assertTrue(found.contains("UsesCommonsCsv.delimiter()"), found);
    }

    @Test
    void commons_statistics_outside_the_statistics_package_is_found() {
        String found = violations(DependencyRules.onlyStatisticsUsesCommonsStatistics(Compiled.FIXTURE));
        assertTrue(found.contains("UsesCommonsStatistics.tail()"), found);
    }

    @Test
    void a_logging_library_is_found() {
        String found = violations(DependencyRules.noLoggingLibrary());
        assertTrue(found.contains("Ambient.logger()"), found);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "java.util.Map.copyOf(",
                "java.util.Set.copyOf(",
                "java.util.Locale.getDefault(",
                "java.lang.System.currentTimeMillis(",
                "java.util.Random.<init>()",
                "java.util.random.RandomGenerator.of(",
                "java.lang.Math.random(",
                "java.time.LocalDate.now()",
                "java.lang.String.format(",
                "java.lang.System.out"
            })
    void a_call_on_the_surroundings_is_found(String expected) {
        String found = violations(AmbientRule.noAmbientState());
        assertTrue(found.contains(expected), found);
    }

    @Test
    void a_call_that_names_seed_clock_or_locale_is_allowed() {
        String found = violations(AmbientRule.noAmbientState());
        assertFalse(found.contains("Ambient.allowed("), found);
    }

    @Test
    void a_mutable_static_field_is_found() {
        String found = violations(DependencyRules.noMutableStaticField());
        assertTrue(found.contains("Ambient.counter"), found);
    }

    @Test
    void a_crowded_package_is_found() {
        assertEquals(List.of(Compiled.FIXTURE + ".foreign has 2"), PackageChecks.crowded(fixtures, 1));
    }

    @Test
    void a_package_without_a_null_marked_package_info_is_found() {
        assertEquals(
                List.of("ambient", "foreign", "high", "stray"), PackageChecks.undescribed(Compiled.FIXTURE_SOURCES));
    }

    @Test
    void a_package_that_is_not_exported_is_found() {
        ModuleDescriptor module = ModuleDescriptor.newModule("fixture")
                .exports(Compiled.FIXTURE + ".ambient")
                .exports(Compiled.FIXTURE + ".foreign")
                .exports(Compiled.FIXTURE + ".high")
                .exports(Compiled.FIXTURE + ".low", Set.of("a.friend"))
                .build();
        assertEquals(
                List.of(Compiled.FIXTURE + ".low", Compiled.FIXTURE + ".stray"),
                PackageChecks.hidden(fixtures, module));
    }

    /** What a rule finds wrong with the fixtures, as text; nothing found is a failure of the test that asks. */
    private static String violations(ArchRule rule) {
        String found =
                String.join("\n", rule.evaluate(fixtures).getFailureReport().getDetails());
        assertFalse(found.isEmpty(), "the rule found nothing");
        return found;
    }
}
