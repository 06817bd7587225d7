/** The ferret plug-in: catalogue, models, vocabularies, cautions and the drawing of coats. */
@org.jspecify.annotations.NullMarked
module org.geneticsrules.ferret {
    requires transitive org.geneticsrules.api;
    requires tools.jackson.databind;
}
