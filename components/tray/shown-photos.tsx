import classes from "@/components/tray/photo-strip.module.css";
import type { PhotoView } from "@/lib/plot/stone-photo";

/** The photographs that an instructor shows of a stone. Nothing where there are none. */
export function ShownPhotos({ photos, label }: { photos: readonly PhotoView[]; label: string }) {
  if (photos.length === 0) return null;
  return (
    <section className={`${classes.root} no-print`} aria-labelledby="photos-title">
      <h2 id="photos-title">Photographs</h2>
      <ul className={classes.strip}>
        {photos.map(({ photoId, caption }) => {
          const alt = caption === "" ? `Photograph of ${label}` : caption;
          return (
            <li key={photoId} className={classes.card}>
              <a
                href={`/api/photos/${photoId}/large`}
                target="_blank"
                rel="noopener"
                className={classes.picture}
              >
                {/* biome-ignore lint/performance/noImgElement: the framework's own image route would be a second door to the files. */}
                <img src={`/api/photos/${photoId}/small`} alt={alt} loading="lazy" />
              </a>
              {caption !== "" && <p className={classes.caption}>{caption}</p>}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
