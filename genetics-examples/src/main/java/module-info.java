/** The runnable program, and the textbook models as a second plug-in. */
@org.jspecify.annotations.NullMarked
module org.geneticsrules.examples {
    requires info.picocli;
    requires org.geneticsrules.api;
    requires org.geneticsrules.ferret;
    requires tools.jackson.databind;
}
