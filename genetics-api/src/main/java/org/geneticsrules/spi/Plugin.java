package org.geneticsrules.spi;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Says what a plug-in is, on the class of its {@link GeneticsProvider}, so that it is known before anything of the plug-in runs.
 *
 * <pre>{@code
 * @Plugin(id = "example.mice", version = "1.0.0", title = "Coats of mice", taxon = "Mus musculus", ncbi = 10090,
 *         licence = "Apache-2.0", defaultModel = "example.mice.agouti")
 * public final class MouseProvider implements GeneticsProvider { ... }
 * }</pre>
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface Plugin {

    /**
     * The id of the plug-in, the same in all its versions.
     *
     * @return lower-case letters and digits in parts joined by points or hyphens, for example {@code example.mice}
     */
    String id();

    /**
     * The version of the plug-in, which need not be that of its documents.
     *
     * @return for example {@code 1.0.0}; letters, digits, points, hyphens and plus signs
     */
    String version();

    /**
     * What the plug-in brings, in a few words.
     *
     * @return the title
     */
    String title();

    /**
     * The licence of its documents.
     *
     * @return an SPDX identifier, for example {@code Apache-2.0}
     */
    String licence();

    /**
     * The kind of organism it is about.
     *
     * @return scientific name; empty if it is about several
     */
    String taxon() default "";

    /**
     * The identifier of the taxon in the NCBI Taxonomy.
     *
     * @return for example 10090; 0 if none is stated
     */
    int ncbi() default 0;

    /**
     * The model to use where a caller names only the plug-in.
     *
     * @return id of one of its models; empty if none is singled out
     */
    String defaultModel() default "";
}
