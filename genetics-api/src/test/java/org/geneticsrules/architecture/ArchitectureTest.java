package org.geneticsrules.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.lang.ArchRule;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The rules of construction, held against the library. {@link ArchitectureRulesTest} shows that each can fail. */
@Tag("default-jdk")
class ArchitectureTest {
    /** About twenty is the aim; the margin spares a package from being torn apart over one type. */
    private static final int MOST_PUBLIC_TYPES = 25;

    private static JavaClasses library;

    @BeforeAll
    static void read() {
        library = Compiled.library();
    }

    @Test
    void a_package_uses_lower_floors_only() {
        check(FloorRule.usesLowerFloorsOnly(Compiled.ROOT, FloorRule.LIBRARY));
    }

    @Test
    void packages_are_free_of_cycles() {
        check(DependencyRules.packagesAreFreeOfCycles(Compiled.ROOT));
    }

    @Test
    void public_signatures_use_java_base_and_own_types_only() {
        check(SignatureRule.publicSignaturesUseOwnTypesOnly(Compiled.ROOT));
    }

    @Test
    void only_the_json_package_uses_jackson() {
        check(DependencyRules.onlyJsonUsesJackson(Compiled.ROOT));
    }

    @Test
    void only_the_table_package_uses_commons_csv() {
        check(DependencyRules.onlyTableUsesCommonsCsv(Compiled.ROOT));
    }

    @Test
    void only_the_statistics_package_uses_commons_statistics() {
        check(DependencyRules.onlyStatisticsUsesCommonsStatistics(Compiled.ROOT));
    }

    @Test
    void no_class_uses_a_logging_library() {
        check(DependencyRules.noLoggingLibrary());
    }

    @Test
    void no_class_depends_on_clock_locale_charset_chance_or_unordered_copies() {
        check(AmbientRule.noAmbientState());
    }

    @Test
    void static_fields_are_final() {
        check(DependencyRules.noMutableStaticField());
    }

    @Test
    void no_package_is_crowded() {
        assertEquals(List.of(), PackageChecks.crowded(library, MOST_PUBLIC_TYPES));
    }

    @Test
    void every_package_has_a_null_marked_package_info() {
        assertEquals(List.of(), PackageChecks.undescribed(Compiled.SOURCES));
    }

    @Test
    void every_package_is_exported() {
        ModuleDescriptor module = ModuleFinder.of(Compiled.CLASSES)
                .find("org.geneticsrules.api")
                .orElseThrow()
                .descriptor();
        assertEquals(List.of(), PackageChecks.hidden(library, module));
    }

    private static void check(ArchRule rule) {
        rule.check(library);
    }
}
