package org.geneticsrules.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.lang.ArchRule;

/** Rules about what a class may use, for any root package. */
final class DependencyRules {
    private DependencyRules() {}

    static ArchRule packagesAreFreeOfCycles(String root) {
        return slices().matching(root + ".(**)").should().beFreeOfCycles();
    }

    /** Jackson is optional for embedders, so one package alone may need it. */
    static ArchRule onlyJsonUsesJackson(String root) {
        return noClasses()
                .that()
                .resideOutsideOfPackage(root + ".json..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("tools.jackson..", "com.fasterxml.jackson..");
    }

    /** So is the library that takes tables apart. */
    static ArchRule onlyTableUsesCommonsCsv(String root) {
        return noClasses()
                .that()
                .resideOutsideOfPackage(root + ".table..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.apache.commons.csv..");
    }

    /** So are those of tail areas, quantiles and roots. */
    static ArchRule onlyStatisticsUsesCommonsStatistics(String root) {
        return noClasses()
                .that()
                .resideOutsideOfPackage(root + ".statistics..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.apache.commons.statistics..", "org.apache.commons.numbers..");
    }

    /** The one logging interface that needs no dependency is {@link System.Logger}. */
    static ArchRule noLoggingLibrary() {
        return noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "java.util.logging..", "org.slf4j..", "org.apache.logging..", "org.apache.commons.logging..");
    }

    static ArchRule noMutableStaticField() {
        return fields().that().areStatic().should().beFinal();
    }
}
