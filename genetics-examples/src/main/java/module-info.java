/** The runnable program, and the textbook models as a second plug-in. */
@org.jspecify.annotations.NullMarked
module org.geneticsrules.examples {
    requires info.picocli;
    requires org.apache.commons.csv;
    requires org.apache.commons.numbers.rootfinder;
    requires org.apache.commons.statistics.distribution;
    requires org.apache.commons.statistics.inference;
    requires org.geneticsrules.api;
    requires org.geneticsrules.ferret;
    requires static org.jspecify;
    requires tools.jackson.databind;

    opens org.geneticsrules.examples to
            info.picocli;

    provides org.geneticsrules.spi.GeneticsProvider with
            org.geneticsrules.examples.textbook.TextbookProvider;
}
