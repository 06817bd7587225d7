/** Inheritance rules as data, and the engines that compute their consequences exactly. */
@org.jspecify.annotations.NullMarked
module org.geneticsrules.api {
    requires com.google.common;
    requires static transitive org.jspecify;
    requires static org.apache.commons.csv;
    requires static org.apache.commons.numbers.rootfinder;
    requires static org.apache.commons.statistics.distribution;
    requires static org.apache.commons.statistics.inference;
    requires static tools.jackson.core;
    requires static tools.jackson.databind;

    exports org.geneticsrules.answer;
    exports org.geneticsrules.answer.compared;
    exports org.geneticsrules.answer.described;
    exports org.geneticsrules.answer.estimated;
    exports org.geneticsrules.answer.named;
    exports org.geneticsrules.answer.recorded;
    exports org.geneticsrules.caution;
    exports org.geneticsrules.comparison;
    exports org.geneticsrules.cross;
    exports org.geneticsrules.document;
    exports org.geneticsrules.estimation;
    exports org.geneticsrules.evidence;
    exports org.geneticsrules.explanation;
    exports org.geneticsrules.expression;
    exports org.geneticsrules.hypothesis;
    exports org.geneticsrules.inference;
    exports org.geneticsrules.json;
    exports org.geneticsrules.linkage;
    exports org.geneticsrules.model;
    exports org.geneticsrules.patch;
    exports org.geneticsrules.pedigree;
    exports org.geneticsrules.planning;
    exports org.geneticsrules.probability;
    exports org.geneticsrules.problem;
    exports org.geneticsrules.render;
    exports org.geneticsrules.simulation;
    exports org.geneticsrules.spi;
    exports org.geneticsrules.statistics;
    exports org.geneticsrules.table;
    exports org.geneticsrules.trait;
    exports org.geneticsrules.vocabulary;

    uses org.geneticsrules.spi.GeneticsProvider;
}
