/** The ferret plug-in: catalogue, models, vocabularies, cautions and the drawing of coats. */
@org.jspecify.annotations.NullMarked
module org.geneticsrules.ferret {
    requires transitive org.geneticsrules.api;
    requires static transitive org.jspecify;
    requires tools.jackson.databind;

    exports org.geneticsrules.ferret;

    provides org.geneticsrules.spi.GeneticsProvider with
            org.geneticsrules.ferret.FerretProvider;
}
